/**
 * What a section takes from its lesson, while both are still as written.
 *
 * Conventions: a key that the section has is the section's; levels, limbs, how they play and forms are joined voice by voice and name
 * by name. A groove brings its own lead voice and layers. What was written for another meter is not taken over: a
 * section in a meter of its own needs a groove of its own where the lesson has written one.
 */
import { isVoice } from '../kit/voice.ts';
import { parseMeter } from '../rhythm/meter.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import type { RawLesson, RawSection } from './schema.ts';

type Levels = NonNullable<RawLesson['balance']>;

/** Levels that are written in a groove, by voice. */
function levelsIn(groove: RawLesson['groove']): Levels {
  const levels = Object.entries(groove ?? {}).flatMap(([voice, part]) =>
    part === undefined || typeof part === 'string' || part.level === undefined ? [] : [[voice, part.level]],
  );
  return Object.fromEntries(levels) as Levels;
}

/** How voices are played as it is written in a groove. */
function howIn(groove: RawLesson['groove']): NonNullable<RawLesson['how']> {
  const said = Object.entries(groove ?? {}).flatMap(([voice, part]) =>
    part === undefined || typeof part === 'string' || part.how === undefined ? [] : [[voice, part.how]],
  );
  return Object.fromEntries(said) as NonNullable<RawLesson['how']>;
}

/** A map without what is left out, so that it hides nothing of the map that it is joined to. */
function given<T extends object>(map: T | undefined): Partial<T> {
  return Object.fromEntries(
    Object.entries(map ?? {}).filter(([, value]) => value !== undefined),
  ) as Partial<T>;
}

/** A map without the keys that another has. */
function without<T extends object>(map: T, other: object | undefined): Partial<T> {
  return Object.fromEntries(
    Object.entries(map).filter(([key]) => !Object.hasOwn(other ?? {}, key)),
  ) as Partial<T>;
}

function sameMeter(lesson: RawLesson, section: RawSection): boolean {
  const meterOf = (text: string | undefined) => parseMeter(text ?? '4/4')?.text;
  return section.meter === undefined || meterOf(section.meter) === meterOf(lesson.meter);
}

/** The lead voice: the section's, else the lesson's where the groove that plays has it. */
function leadOf(lesson: RawLesson, section: RawSection): RawLesson['lead'] {
  const { lead } = lesson;
  const isThere = section.groove === undefined || (lead !== undefined && section.groove[lead] !== undefined);
  return section.lead ?? (isThere ? lead : undefined);
}

/** A section as a lesson of its own, still as written. */
export function inherit(lesson: RawLesson, section: RawSection): RawLesson {
  const groove = section.groove ?? (sameMeter(lesson, section) ? lesson.groove : undefined);
  return {
    ...lesson,
    ...given(section),
    text: section.text,
    media: section.media,
    groove,
    lead: leadOf(lesson, section),
    layers: section.layers ?? (section.groove || groove !== lesson.groove ? undefined : lesson.layers),
    balance: {
      ...levelsIn(lesson.groove),
      ...given(lesson.balance),
      ...levelsIn(section.groove),
      ...given(section.balance),
    },
    exerciseBalance: { ...given(lesson.exerciseBalance), ...given(section.exerciseBalance) },
    limbs: { ...given(lesson.limbs), ...given(section.limbs) },
    how: { ...howIn(lesson.groove), ...given(lesson.how), ...howIn(section.groove), ...given(section.how) },
    forms: { ...given(section.forms), ...without(given(lesson.forms), section.forms) },
    exercises: section.exercises,
    sections: undefined,
  };
}

/** Keys of which a section may bring some and take others from the lesson. */
const JOINED: readonly (string | number | undefined)[] = [
  'balance',
  'exerciseBalance',
  'limbs',
  'how',
  'forms',
];

/** Whether what stands at a path of a section's lesson is written in the section, and not taken over. */
function isOwn(section: RawSection, [key, inside]: FieldPath): boolean {
  if (key === 'exercises') return true;
  const value = section[key as keyof RawSection];
  if (value === undefined) return false;
  return !JOINED.includes(key) || inside === undefined || Object.hasOwn(value as object, inside);
}

/**
 * A report of faults for what {@link inherit} made: a fault of the section's own stands in the section; one of what
 * it takes over was told with the lesson.
 */
export function reportIn(section: RawSection, at: FieldPath, report: Report): Report {
  return (fault) => {
    if (isOwn(section, fault.path)) report({ ...fault, path: [...at, ...fault.path] });
  };
}

/** Reports a section in a meter of its own that has no groove for it. */
export function checkGroove(lesson: RawLesson, section: RawSection, at: FieldPath, report: Report): void {
  const written = Object.keys(lesson.groove ?? {}).some(isVoice);
  const read = parseMeter(section.meter ?? '');
  if (!read || !written || section.groove || sameMeter(lesson, section)) return;
  report({
    code: 'meter-without-groove',
    path: [...at, 'meter'],
    found: { fact: 'quoted', text: read.text },
    expected: { fact: 'a-groove-in-this-meter' },
  });
}
