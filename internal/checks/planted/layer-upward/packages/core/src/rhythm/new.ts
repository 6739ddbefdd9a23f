import '../lesson/title.ts';
