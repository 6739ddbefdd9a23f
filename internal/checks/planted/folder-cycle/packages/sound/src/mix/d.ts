import '../kit/b.ts';
