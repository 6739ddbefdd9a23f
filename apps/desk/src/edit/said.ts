/** Changing what an exercise says beside its notes. Bars and beats count from 0. */
import type { DynamicSign, Example, Exercise, How, Medium, Silent, Voice } from '@shedbook/core';
import type { Unnumbered } from './exercises.ts';

/** A hairpin that begins on a beat, or the end of one. */
export type Hairpin = NonNullable<DynamicSign['hairpin']>;

/** What stands on a beat. */
export type Sign = Pick<DynamicSign, 'mark' | 'hairpin'>;

/** A beat of an exercise. */
export interface BeatPlace {
  readonly bar: number;
  readonly beat: number;
}

/** What stands on a beat of an exercise. */
export function signAt({ dynamics }: Exercise, { bar, beat }: BeatPlace): Sign {
  const sign = dynamics?.find((each) => each.bar === bar && each.beat === beat);
  return { mark: sign?.mark ?? null, hairpin: sign?.hairpin ?? null };
}

/** The exercise with other signs on a beat; a dynamic ends a hairpin by itself. */
export function withSign(exercise: Exercise, { bar, beat }: BeatPlace, sign: Sign): Unnumbered {
  const { dynamics = [], ...rest } = exercise;
  const others = dynamics.filter((each) => each.bar !== bar || each.beat !== beat);
  const hairpin = sign.mark !== null && sign.hairpin === 'end' ? null : sign.hairpin;
  const own = sign.mark === null && hairpin === null ? [] : [{ bar, beat, mark: sign.mark, hairpin }];
  const all = [...others, ...own].toSorted((a, b) => a.bar - b.bar || a.beat - b.beat);
  return all.length === 0 ? rest : { ...rest, dynamics: all };
}

/** The exercise with another text over or under a bar; a bar line in it would be another bar. */
export function withText(
  exercise: Exercise,
  where: 'above' | 'below',
  bar: number,
  text: string,
): Unnumbered {
  const { [where]: before = [], ...rest } = exercise;
  const said = text.replaceAll('|', '/').trim();
  const texts = Array.from({ length: Math.max(before.length, bar + 1) }, (_, i) =>
    i === bar ? said || null : (before[i] ?? null),
  );
  const last = texts.findLastIndex((each) => each !== null);
  return last < 0 ? rest : { ...rest, [where]: texts.slice(0, last + 1) };
}

/** Whether the fill of an exercise begins on a beat. */
export function fillFrom({ fill }: Exercise, { bar, beat }: BeatPlace): boolean {
  return fill?.bar === bar && fill.beat === beat;
}

/** The exercise with a fill from a beat on, or none; null silences all of the groove. */
export function withFill(
  exercise: Exercise,
  from: BeatPlace | null,
  silences: readonly Silent[] | null,
): Unnumbered {
  const { fill: _, ...rest } = exercise;
  return from === null ? rest : { ...rest, fill: { bar: from.bar, beat: from.beat, silences } };
}

/** The exercise with words for how a voice is played while it does; with none where there are none. */
export function withHow(exercise: Exercise, voice: Voice, how: How): Unnumbered {
  const { how: before = {}, ...rest } = exercise;
  const { [voice]: _, ...others } = before;
  const all = how.length > 0 ? { ...others, [voice]: how } : others;
  return Object.keys(all).length === 0 ? rest : { ...rest, how: all };
}

/** The exercise as an example, or as none. */
export function withExample(exercise: Exercise, example: Example | null): Unnumbered {
  const { example: _, ...rest } = exercise;
  return example ? { ...rest, example } : rest;
}

/** The exercise with other pictures, sound and video beside it. */
export function withMedia(exercise: Exercise, media: readonly Medium[]): Unnumbered {
  const { media: _, ...rest } = exercise;
  return media.length === 0 ? rest : { ...rest, media };
}

/** The exercise with limbs and voices of the groove that are silent under it. */
export function withRests(exercise: Exercise, silent: readonly Silent[]): Unnumbered {
  const { rests: _, ...rest } = exercise;
  return silent.length === 0 ? rest : { ...rest, rests: silent };
}
