/** Reads a practice log; a chunk of its own, since few visits take a log in. */
export { parsePracticeLog } from '@shedbook/coach';
