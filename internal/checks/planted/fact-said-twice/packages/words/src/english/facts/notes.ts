import { sentences } from '../../facts/sentences.ts';

/** Notes. */
export const notes = sentences<never>()({ late: 'late', early: 'early' });
