import { sentences } from '../../facts/sentences.ts';

/** Takes. */
export const takes = sentences<never>()({ heard: 'heard', late: 'too late' });
