import './a.ts';
