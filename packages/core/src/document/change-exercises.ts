/** The exercises of a lesson or a section after its meter or feel has changed. */
import type { DynamicSign } from '../lesson/expression.ts';
import { handsOf, withHands } from '../lesson/hands.ts';
import { exerciseKey, patternsName } from '../lesson/identity.ts';
import type { Exercise } from '../lesson/lesson.ts';
import type { Cell } from '../rhythm/cell.ts';
import { beatAfter, cellInTwo, changeMeter, type MeterChange } from '../rhythm/change-meter.ts';
import { released } from '../rhythm/held.ts';
import { type Pattern, strokesOfBar } from '../rhythm/pattern.ts';

/** What is to be done with every pattern. */
export interface Rewriting {
  /** Null where the meter stays. */
  readonly meter: MeterChange | null;
  /** Whether beats of three with nothing in their middle are written in two. */
  readonly inTwo: boolean;
}

/** A pattern as it is written after a change, and which of its strokes each of the new ones was. */
export interface Rewritten {
  readonly pattern: Pattern;
  readonly strokes: readonly number[];
  /** Number of strokes that have no place any more. */
  readonly lost: number;
  /** Number of strokes that stand on the slot before theirs. */
  readonly moved: number;
}

/** A cell after a change of the feel. */
export function rewriteCell(of: Cell, { inTwo }: Rewriting): Cell {
  return (inTwo ? cellInTwo(of) : of) ?? of;
}

/** A pattern after a change. */
export function rewritePattern(pattern: Pattern, how: Rewriting, goesOn: 'silent' | 'repeats'): Rewritten {
  const { to: count } = strokesOfBar(pattern, pattern.bars.length - 1);
  const same = { pattern, strokes: Array.from({ length: count }, (_, i) => i), lost: 0, moved: 0 };
  const changed = how.meter ? changeMeter(pattern, how.meter, goesOn) : same;
  const bars = changed.pattern.bars.map((bar) => bar.map((each) => rewriteCell(each, how)));
  return { ...changed, pattern: { bars: released(bars) } };
}

/** An exercise after a change, and what of it has no place. */
export interface ChangedExercise {
  readonly before: Exercise;
  readonly exercise: Exercise;
  /** Number of strokes that have no place any more. */
  readonly lost: number;
  /** Number of strokes that stand on the slot before theirs. */
  readonly moved: number;
  readonly losesDynamics: boolean;
  readonly movesFill: boolean;
}

/** Signs on the beats that are left; of two that come to one beat the first stays. */
function changeDynamics(signs: readonly DynamicSign[], change: MeterChange): readonly DynamicSign[] {
  const taken = new Set<string>();
  return signs.flatMap((sign) => {
    const beat = beatAfter(change, sign.beat);
    const place = `${sign.bar} ${beat}`;
    if (beat === null || taken.has(place)) return [];
    taken.add(place);
    return [{ ...sign, beat }];
  });
}

/** What an exercise says beside its notes, after a change of meter. */
function changeExpression(exercise: Exercise, change: MeterChange | null) {
  const { dynamics, fill, ...rest } = exercise;
  if (!change) return { exercise, losesDynamics: false, movesFill: false };
  const signs = changeDynamics(dynamics ?? [], change);
  const beat = fill ? beatAfter(change, fill.beat) : null;
  const last = change.to.beats.length - 1;
  const said = {
    ...(signs.length > 0 ? { dynamics: signs } : {}),
    ...(fill ? { fill: { ...fill, beat: beat ?? last } } : {}),
  };
  const losesDynamics = signs.length < (dynamics ?? []).length;
  return { exercise: { ...rest, ...said }, losesDynamics, movesFill: fill !== undefined && beat === null };
}

/** An exercise after a change; hands go with their strokes. */
export function changeExercise(before: Exercise, how: Rewriting): ChangedExercise {
  const said = changeExpression(before, how.meter);
  const rewritten = before.parts.map((part) => rewritePattern(part.pattern, how, 'silent'));
  const hands = before.parts.map((_, i) => {
    const own = handsOf(before, i);
    const left = own ? (rewritten[i]?.strokes.flatMap((stroke) => own[stroke] ?? []) ?? []) : [];
    return left.length > 0 ? left : null;
  });
  const parts = before.parts.map((part, i) =>
    withHands(
      { ...part, pattern: rewritten[i]?.pattern ?? part.pattern },
      i === 0 ? null : (hands[i] ?? null),
    ),
  );
  const sum = (of: 'lost' | 'moved') => rewritten.reduce((total, each) => total + each[of], 0);
  return {
    ...{ before, losesDynamics: said.losesDynamics, movesFill: said.movesFill },
    ...{ lost: sum('lost'), moved: sum('moved') },
    exercise: { ...said.exercise, parts, sticking: hands[0] ?? null },
  };
}

/**
 * Those that are still told apart, and those that would be another one's twin and were not before. An exercise whose
 * name something refers to keeps it.
 */
export function withoutTwins(all: readonly ChangedExercise[], inUse: readonly string[]) {
  const names = new Map<string, string>();
  const twins: ChangedExercise[] = [];
  const kept = all.flatMap((each) => {
    const name = patternsName(each.exercise);
    const was = names.get(name);
    if (was !== undefined && was !== patternsName(each.before)) {
      twins.push(each);
      return [];
    }
    names.set(name, was ?? patternsName(each.before));
    const key = exerciseKey(each.before);
    const isNamed = each.exercise.id === undefined && name !== key && inUse.includes(key);
    return [{ ...each, exercise: isNamed ? { ...each.exercise, id: key } : each.exercise }];
  });
  return { kept, twins };
}
