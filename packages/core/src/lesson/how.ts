/**
 * How limbs play, as a lesson says it: for a voice wherever it plays, or while one exercise does.
 *
 * Conventions: words of the list (see `HOW_WORDS`) and a teacher's own, in the order in which they are written. They say
 * nothing of what is played: an exercise is the same one with and without them.
 */
import type { HowWord } from '../kit/how.data.ts';
import { isHowWord } from '../kit/how.data.ts';
import { VOICES, type Voice } from '../kit/voice.ts';

/** Words of how a voice is played; at least one. */
export type How = readonly string[];

/** How some voices are played. */
export type HowByVoice = Readonly<Partial<Record<Voice, How>>>;

interface Saying {
  readonly how: HowByVoice;
}

/** How a voice is played while an exercise does, or in the groove alone (null): empty where nothing is said. */
export function howOf(lesson: Saying, exercise: Partial<Saying> | null, voice: Voice): How {
  return exercise?.how?.[voice] ?? lesson.how[voice] ?? [];
}

/** What plays, and how. */
interface Played extends Saying {
  readonly groove: readonly { readonly voice: Voice }[];
}

/**
 * The voices that play, those of an exercise first, each with how it is played, where that is said.
 * @param exercise null for the groove alone
 */
export function howEach(
  lesson: Played,
  exercise: (Partial<Saying> & { readonly parts: readonly { readonly voice: Voice }[] }) | null,
): readonly (readonly [Voice, How])[] {
  const parts = [...(exercise?.parts ?? []), ...lesson.groove];
  const voices = [...new Set(parts.map(({ voice }) => voice))];
  return voices.flatMap((voice) => {
    const how = howOf(lesson, exercise, voice);
    return how.length > 0 ? [[voice, how] as const] : [];
  });
}

/** Those of the words that are of the list. */
export function howWords(how: How): readonly HowWord[] {
  return how.filter(isHowWord);
}

/** The words as a file has them. */
export function formatHow(how: How): string {
  return how.join(', ');
}

/** Voices and their words, in the order of the list of voices. */
export function howEntries(how: HowByVoice): readonly (readonly [Voice, How])[] {
  return VOICES.flatMap((voice) => {
    const said = how[voice];
    return said ? [[voice, said] as const] : [];
  });
}
