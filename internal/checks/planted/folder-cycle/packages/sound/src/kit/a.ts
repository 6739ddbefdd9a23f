import '../mix/c.ts';
