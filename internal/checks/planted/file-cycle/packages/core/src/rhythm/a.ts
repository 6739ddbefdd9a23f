import './b.ts';
