/**
 * Passkeys of a teacher: what a device is asked and answers is as browsers have it.
 *
 * Source: W3C, Web Authentication, Level 3, section 5.1 (JSON of credentials and options).
 */
import * as z from 'zod/mini';

/** What a device is asked, as a browser takes it. */
export const passkeyQuestion = z.readonly(z.object({ options: z.record(z.string(), z.unknown()) }));

/** What a device answered, as a browser gives it. */
export const passkeyAnswer = z.readonly(
  z.looseObject({ id: z.string().check(z.maxLength(2_000)), type: z.literal('public-key') }),
);

/** What a device answered. */
export type PasskeyAnswer = z.output<typeof passkeyAnswer>;

/** A passkey as its teacher sees it. */
export const storedPasskey = z.readonly(
  z.object({
    id: z.string(),
    madeAt: z.string().check(z.describe('ISO 8601, in UTC')),
    usedAt: z.nullable(z.string()).check(z.describe('when it last signed somebody in; null for never')),
  }),
);

/** A passkey as its teacher sees it. */
export type StoredPasskey = z.output<typeof storedPasskey>;
