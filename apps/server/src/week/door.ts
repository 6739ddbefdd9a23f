/** The door that private links open: whose it is, and a wait for whoever tries too many. */
import { type Refusal, refusal, type StoredStudent } from '@shedbook/routes';
import type { LanguageTag } from '@shedbook/words';
import type { LinkStore } from '../store/links.ts';
import type { StudentStore } from '../store/students.ts';
import { countAttempts } from './attempts.ts';

/** What a link opened, or why it did not. */
export type Opening =
  | { readonly kind: 'open'; readonly student: StoredStudent; readonly language: LanguageTag }
  | { readonly kind: 'refused'; readonly refusal: Refusal<'no-such-link' | 'too-often'> };

/** Opens a private link for a caller. */
export type Door = (token: string, ip: string) => Promise<Opening>;

/** Wrong links that one caller may try within ten minutes. */
const LIMITS = { most: 30, withinMs: 600_000 } as const;

/** A door. @param clock gives milliseconds that never go back */
export function createDoor(links: LinkStore, students: StudentStore, clock: () => number): Door {
  const attempts = countAttempts(LIMITS, clock);
  return async (token, ip) => {
    const waitSeconds = attempts.waitSeconds(ip);
    if (waitSeconds > 0) return { kind: 'refused', refusal: refusal('too-often', { waitSeconds }) };
    const link = await links.open(token);
    const student = link && (await students.read(link.student));
    if (!link || !student) {
      attempts.failed(ip);
      return { kind: 'refused', refusal: refusal('no-such-link', {}) };
    }
    return { kind: 'open', student, language: link.language };
  };
}
