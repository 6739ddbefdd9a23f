import '../wood/c.ts';
