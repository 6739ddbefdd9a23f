import '../skin/b.ts';
