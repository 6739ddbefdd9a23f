/**
 * Second passes: what else a teacher makes of an exercise that is there. The exercise itself stays as it is.
 *
 * Conventions: the same lesson, exercise, pass and seed give the same result.
 */
import { type Exercise, type Lesson, type Random, seededRandom, type Voice } from '@shedbook/core';
import { accent } from './accents.ts';
import type { Arranged } from './arranged.ts';
import { endInFill } from './fill.ts';
import { giveHands } from './hands.ts';
import { goOverKit } from './kit.ts';
import type { OnePassNote, PassFact, PassNoteFact } from './pass-fact.ts';
import type { AccentRule, HandsRule, KitRule, SharingRule } from './rules.data.ts';
import { share } from './share.ts';

/** A second pass, with what it goes by. */
export type Pass =
  | { readonly pass: 'share'; readonly rule: SharingRule; readonly lower: Voice }
  | { readonly pass: 'kit'; readonly rule: KitRule }
  | { readonly pass: 'accents'; readonly rule: AccentRule }
  | { readonly pass: 'hands'; readonly rule: HandsRule }
  | { readonly pass: 'fill'; readonly beats: 1 | 2; readonly bars: number };

function make(lesson: Lesson, exercise: Exercise, pass: Pass, random: Random): Arranged {
  switch (pass.pass) {
    case 'share':
      return share(lesson, exercise, pass.rule, pass.lower);
    case 'kit':
      return goOverKit(lesson, exercise, pass.rule);
    case 'accents':
      return accent(lesson, exercise, pass.rule, random);
    case 'hands':
      return giveHands(lesson, exercise, pass.rule);
    case 'fill':
      return endInFill(lesson, exercise, pass, random);
  }
}

/** What is played, to compare. */
function played({ parts, sticking }: Exercise): string {
  return JSON.stringify([parts, sticking]);
}

/** What a pass makes of an exercise; the exercise keeps its number, name and notes. */
export function arrange(lesson: Lesson, exercise: Exercise, pass: Pass, seed: number | string): Arranged {
  const made = make(lesson, exercise, pass, seededRandom(`${seed} ${exercise.number}`));
  if (!made.exercise || played(made.exercise) !== played(exercise)) return made;
  return { exercise: null, said: null, notes: [{ fact: 'pass-no-stroke' }] };
}

/** What several passes, one after another, make of an exercise. */
export interface ArrangedTogether {
  /** Null where none of them had anything to do. */
  readonly exercise: Exercise | null;
  readonly said: readonly PassFact[];
  readonly notes: readonly PassNoteFact[];
}

/** What one of several passes could not do. */
function noteOf({ pass }: Pass, note: OnePassNote): PassNoteFact {
  return { fact: 'pass-of', pass: { fact: `of-${pass}` }, note };
}

/** What passes make of an exercise, each of what the one before it has made. */
export function arrangeAll(
  lesson: Lesson,
  exercise: Exercise,
  passes: readonly Pass[],
  seed: number | string,
): ArrangedTogether {
  let made = exercise;
  const results = passes.map((pass) => {
    const result = arrange(lesson, made, pass, seed);
    made = result.exercise ?? made;
    return { ...result, pass };
  });
  return {
    exercise: results.some((result) => result.exercise) ? made : null,
    said: results.flatMap(({ said }) => said ?? []),
    notes: results.flatMap(({ pass, notes }) =>
      notes.map((note) => (passes.length > 1 ? noteOf(pass, note) : note)),
    ),
  };
}
