import { z } from 'zod';

/** Z. */
export const schema = z;
