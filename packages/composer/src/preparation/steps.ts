/**
 * What comes before a section: its subdivision, counted and clapped. First the beat alone, then every part of it, then
 * the first and the last, then the last and the middle one by themselves.
 *
 * Conventions: a step is a bar; a part of a beat counts from 0. Which parts a beat has follows from meter and feel: a
 * dotted beat and swung eighths have three, swung sixteenths four, even beats as many as the section is mostly written in.
 * Source: common practice of teaching a new subdivision: count it, clap it, keep it.
 */
import { type Cell, cell, type Lesson, type Pattern, toNumber, writableSlots } from '@shedbook/core';

/** What is clapped of each beat. */
export type StepName = 'beat' | 'every' | 'first-and-last' | 'last' | 'middle';

/** One bar that is counted and clapped. */
export interface PreparationStep {
  readonly name: StepName;
  readonly pattern: Pattern;
}

/** Parts of an even beat that a section may be prepared for. */
const EVEN = [2, 3, 4] as const;

/** All the cells of a section. */
function cellsIn({ vocabulary, exercises, groove }: Lesson): readonly Cell[] {
  const written = [...exercises.flatMap(({ parts }) => parts), ...groove];
  return [...vocabulary.map((each) => each.cell), ...written.flatMap(({ pattern }) => pattern.bars.flat())];
}

/** The parts that an even beat is mostly written in; eighths where nothing says otherwise. */
function evenParts(section: Lesson): number {
  const cells = cellsIn(section);
  const count = (parts: number) => cells.filter(({ marks }) => marks.length === parts).length;
  return EVEN.reduce((most, parts) => (count(parts) > count(most) ? parts : most), 2);
}

/** Into how many parts each beat of a section's bar is divided. */
export function partsOfBeats(section: Lesson): readonly number[] {
  const { meter, feel } = section;
  const shortest = Math.min(...meter.beats.map(toNumber));
  const isUneven = meter.beats.some((beat) => toNumber(beat) > shortest);
  if (isUneven) return meter.beats.map((beat) => (toNumber(beat) > shortest ? 3 : 2));
  if (meter.compound) return meter.beats.map(() => 3);
  const swung = feel.kind === 'ratio' && feel.of === 'sixteenths' ? 4 : 3;
  const parts =
    feel.kind === 'even' || (feel.kind === 'ratio' && feel.ratio === 1) ? evenParts(section) : swung;
  return meter.beats.map((beat) => (writableSlots([beat]).some((each) => each === parts) ? parts : 2));
}

type Claps = (part: number, parts: number) => boolean;

const STEPS: Readonly<Record<StepName, Claps>> = {
  beat: (part) => part === 0,
  every: () => true,
  'first-and-last': (part, parts) => part === 0 || part === parts - 1,
  last: (part, parts) => part === parts - 1,
  middle: (part, parts) => part === Math.floor(parts / 2),
};

function barOf(claps: Claps, beats: readonly number[]): readonly Cell[] {
  return beats.map((parts) =>
    cell(Array.from({ length: parts }, (_, part) => (claps(part, parts) ? 'x' : '.')).join('')),
  );
}

/** The steps of a section's preparation, each another bar, in the order in which they are learnt. */
export function preparationSteps(section: Lesson): readonly PreparationStep[] {
  const beats = partsOfBeats(section);
  const names = Object.keys(STEPS) as StepName[];
  const seen = new Set<string>();
  return names.flatMap((name): PreparationStep[] => {
    const bar = name === 'beat' ? beats.map(() => cell('x')) : barOf(STEPS[name], beats);
    const text = bar.map((each) => each.text).join(' ');
    if (seen.has(text)) return [];
    seen.add(text);
    return [{ name, pattern: { bars: [bar] } }];
  });
}
