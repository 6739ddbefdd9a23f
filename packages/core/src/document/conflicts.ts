/** What is written and cannot be played, or not be heard: one limb in two places at once, a foot under a hand that shuts its hi-hat. */
import { perform } from '../groove/perform.ts';
import { barsOf } from '../groove/place.ts';
import { hihatsOf, onceThrough, overHihats, shutFoot } from '../groove/shut-foot.ts';
import type { Stroke } from '../groove/stroke.ts';
import { homeOf } from '../kit/strike.ts';
import type { Limb, Voice } from '../kit/voice.ts';
import type { Exercise, Lesson } from '../lesson/lesson.ts';
import { sectionOf } from '../lesson/section.ts';
import { formatFraction } from '../rhythm/fraction.ts';
import type { Fault } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import type { Resolved } from './resolve.ts';

interface Conflict {
  readonly first: Stroke;
  readonly second: Stroke;
  readonly limb: Limb;
}

/** The first moment at which one limb has two strokes, or null. */
function firstConflict(strokes: readonly Stroke[]): Conflict | null {
  const taken = new Map<string, Stroke>();
  for (const stroke of strokes) {
    if (!stroke.limb) continue;
    const moment = `${stroke.limb} ${formatFraction(stroke.at)}`;
    const other = taken.get(moment);
    if (other) return { first: other, second: stroke, limb: stroke.limb };
    taken.set(moment, stroke);
  }
  return null;
}

/** A warning at the first stroke of the hi-hat foot that cannot be heard; nothing where all can. */
function shutFootFault(strokes: readonly Stroke[], path: FieldPath): readonly Fault[] {
  const [first] = shutFoot(strokes).shut;
  if (!first) return [];
  const { bar, beat, slot } = first.written;
  return [
    {
      code: 'shut-foot',
      severity: 'warning',
      path,
      found: { fact: 'shut-foot', bar, beat, slot },
      expected: { fact: 'foot-on-free-hihat' },
    },
  ];
}

/** What an exercise that plays a hi-hat itself is over its groove; nothing of one that leaves them to the groove. */
function ownHihats(lesson: Lesson, exercise: Exercise): readonly Stroke[] {
  const own = new Set<Voice>(exercise.parts.map(({ voice }) => homeOf(voice) ?? voice));
  const isOwn = own.has('hihat') || own.has('hihat-foot');
  return isOwn ? overHihats(sectionOf(lesson, exercise.number), exercise) : [];
}

function faultsOf({ lesson, pathOf }: Resolved, exercise: Exercise): readonly Fault[] {
  const form = onceThrough('pattern', barsOf(exercise));
  const { strokes } = perform(lesson, { exercise: exercise.number, form });
  const path = pathOf(exercise.number);
  const shut = shutFootFault(ownHihats(lesson, exercise), path);
  const conflict = firstConflict(strokes);
  if (!conflict) return shut;
  const { first, second, limb } = conflict;
  const { bar, beat, slot } = second.written;
  const found = {
    fact: 'limb-conflict',
    voices: [first.voice, second.voice],
    limb,
    bar,
    beat,
    slot,
  } as const;
  const expected = { fact: 'one-stroke-a-limb' } as const;
  const repair = { fact: 'sticking-or-limb' } as const;
  return [{ code: 'limb-conflict', severity: 'warning', path, found, expected, repair }, ...shut];
}

/** A warning for each groove and exercise in which a limb has two strokes at the same moment, or a foot is not heard. */
export function findConflicts(resolved: Resolved): readonly Fault[] {
  const grooves = resolved.grooves.flatMap(({ of, path }) =>
    shutFootFault(hihatsOf(of), [...path, 'groove', 'hihat-foot']),
  );
  return [...grooves, ...resolved.lesson.exercises.flatMap((exercise) => faultsOf(resolved, exercise))];
}
