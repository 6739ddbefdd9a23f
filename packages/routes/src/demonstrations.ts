/** Exercises as the teacher plays them, kept with their lesson. */
import * as z from 'zod/mini';

/** A demonstration that is kept. */
export const keptDemonstration = z.readonly(
  z.object({
    id: z.string(),
    exercise: z
      .nullable(z.number())
      .check(z.describe('number of the exercise now; null where the lesson has it no more')),
    isShown: z
      .boolean()
      .check(z.describe('whether students hear it: the exercise is there, and is played as it was then')),
    seconds: z.number(),
    keptAt: z.string().check(z.describe('ISO 8601, in UTC')),
  }),
);

/** A demonstration that is kept. */
export type KeptDemonstration = z.output<typeof keptDemonstration>;
