import './fraction.test.ts';
