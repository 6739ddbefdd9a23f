import '../index.ts';
