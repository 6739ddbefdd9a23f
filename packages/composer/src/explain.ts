/**
 * Explaining a grade: what makes a bar hard, as facts, and why one is harder than another.
 *
 * Conventions: points with one decimal; bars and beats from 1.
 */
import {
  type Exercise,
  type InBarFact,
  type Lesson,
  type PlaceFact,
  placeInBar,
  sectionOf,
  struckSlots,
} from '@shedbook/core';
import { type Grade, type GradedPart, gradeLines, gradeSettingsOf } from './grade.ts';
import type { Company } from './ground.ts';
import { PARTS, type PartName } from './parts.data.ts';
import { placeWords } from './place-words.ts';
import type { ReasonFact } from './reason-fact.ts';
import { exerciseText } from './report.ts';
import { type Line, linesOf, withoutUnisons } from './score.ts';

/** One reason, with the points it is worth. */
export interface Reason {
  readonly part: PartName;
  /** Points of difficulty. */
  readonly points: number;
  readonly why: ReasonFact;
}

/** An explained bar. */
export interface Explanation {
  /** Pattern text of the comping voice. */
  readonly pattern: string;
  readonly grade: Grade;
  /** Heaviest first. */
  readonly reasons: readonly Reason[];
}

/** One difference between two bars. */
export interface Difference {
  readonly part: PartName;
  /** Points of difficulty; negative where the second bar is easier. */
  readonly points: number;
  readonly text: string;
}

/** Two bars compared. */
export interface Comparison {
  /** Points of the second less those of the first. */
  readonly points: number;
  /** Heaviest first. */
  readonly reasons: readonly Difference[];
  /** One sentence, such as "14 is harder than 13 because …". */
  readonly text: string;
}

/** A difference of fewer points is none. */
const NO_DIFFERENCE = 0.005;

/** Reasons that a comparison names on either side, at most. */
const NAMED_REASONS = 3;

type Kind = 'alone' | 'foot' | 'lead';

interface PlacedStroke {
  readonly kind: Kind;
  readonly place: PlaceFact;
  readonly words: string;
  readonly company: Company;
}

interface Subject {
  readonly number: number;
  readonly text: string;
  readonly grade: Grade;
  readonly strokes: readonly PlacedStroke[];
}

/** With whom a stroke falls for the most part. */
function kindOf(company: Company): Kind {
  if (company.alone >= 0.5) return 'alone';
  return company.lead >= company.foot ? 'lead' : 'foot';
}

/** A place, with its bar where there are several. */
function placed(place: InBarFact['place'], bar: number, bars: number): PlaceFact {
  return bars > 1 ? { fact: 'in-bar', place, bar: bar + 1 } : place;
}

function strokesOf(lesson: Lesson, lines: readonly Line[]): readonly PlacedStroke[] {
  const inBar = lesson.meter.beats.length;
  const [first] = lines;
  const bars = (first?.cells.length ?? 0) / inBar;
  return lines.flatMap(({ ground, cells }) =>
    cells.flatMap((cell, at) => {
      const bar = Math.floor(at / inBar);
      const beat = at % inBar;
      return struckSlots(cell).map((slot) => {
        const company = ground.company(at, slot, cell.marks.length);
        const place = placeWords(beat, slot, cell.marks.length);
        return {
          kind: kindOf(company),
          place: placed(placeInBar(beat, slot, cell.marks.length), bar, bars),
          words: bars > 1 ? `${place} in bar ${bar + 1}` : place,
          company,
        };
      });
    }),
  );
}

function subjectOf(whole: Lesson, exercise: Exercise): Subject {
  const lesson = sectionOf(whole, exercise.number);
  const lines = linesOf(lesson, exercise);
  return {
    number: exercise.number,
    text: exerciseText(lesson, exercise),
    grade: gradeLines(lines, gradeSettingsOf(lesson)),
    strokes: strokesOf(lesson, withoutUnisons(lines)),
  };
}

function listed(words: readonly string[]): string {
  if (words.length <= 1) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function fallingFact(subject: Subject, kind: Kind): ReasonFact {
  const own = subject.strokes.filter((stroke) => stroke.kind === kind);
  const places = own.map((stroke) => stroke.place);
  if (kind === 'alone') return { fact: 'fall-alone', strokes: own.length, places };
  const voices = [...new Set(own.flatMap((stroke) => stroke.company.voices))];
  return { fact: 'fall-with', strokes: own.length, voices, places };
}

function reasonFact(subject: Subject, { part, count }: GradedPart): ReasonFact {
  if (part === 'silence') return { fact: 'silence', bars: count };
  const isPlace = part === 'alone' || part === 'foot' || part === 'lead';
  if (isPlace && subject.strokes.some((stroke) => stroke.kind === part)) return fallingFact(subject, part);
  return { fact: `part-${part}`, count };
}

function byWeight(a: { readonly points: number }, b: { readonly points: number }): number {
  return Math.abs(b.points) - Math.abs(a.points);
}

/** Why a bar is as hard as it is over the lesson's groove. */
export function explain(lesson: Lesson, exercise: Exercise): Explanation {
  const subject = subjectOf(lesson, exercise);
  const reasons = subject.grade.parts
    .filter((part) => part.points >= NO_DIFFERENCE)
    .map((part): Reason => ({ part: part.part, points: part.points, why: reasonFact(subject, part) }))
    .sort(byWeight);
  return { pattern: subject.text, grade: subject.grade, reasons };
}

const NUMBER_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

function words(count: number): string {
  return NUMBER_WORDS[count] ?? String(count);
}

/** `one more stroke falls alone (the let of 3)`, or `it has the let of 2 alone instead of the let of 4`. */
function strokesText(first: Subject, second: Subject, kind: Kind): string {
  const of = (subject: Subject) =>
    subject.strokes.filter((stroke) => stroke.kind === kind).map((stroke) => stroke.words);
  const before = of(first);
  const after = of(second);
  const come = after.filter((each) => !before.includes(each));
  const gone = before.filter((each) => !after.includes(each));
  const ending = { alone: 'alone', foot: 'with a foot only', lead: 'with the lead hand' }[kind];
  if (come.length > 0 && gone.length > 0) {
    return `${listed(come)} ${come.length === 1 ? 'falls' : 'fall'} ${ending} instead of ${listed(gone)}`;
  }
  const size = come.length + gone.length;
  const verb = size === 1 ? 'stroke falls' : 'strokes fall';
  return `${words(size)} ${come.length > 0 ? 'more' : 'fewer'} ${verb} ${ending} (${listed([...come, ...gone])})`;
}

/** What more, or less, of a part means, in words. */
const MORE_OR_LESS: Readonly<Partial<Record<PartName, readonly [string, string]>>> = {
  silence: ['1 is silent', '1 is played'],
  unison: ['limbs strike together more often', 'limbs strike together less often'],
  interlock: ['it is handed from limb to limb more often', 'it is handed from limb to limb less often'],
  switch: ['it changes company more often', 'it changes company less often'],
  wnbd: ['its strokes pull harder against the beat', 'its strokes lie closer to the beat'],
  lhl: [
    'more strong places are silent after weaker strokes',
    'fewer strong places are silent after weaker strokes',
  ],
  offBeatness: ['more strokes lie far off the beat', 'fewer strokes lie far off the beat'],
  keith: ['more strokes come early for their length', 'fewer strokes come early for their length'],
  pulse: ['it says less of the pulse', 'it says more of the pulse'],
  density: ['it has more strokes', 'it has fewer strokes'],
  memory: ['later bars bring more that is new', 'later bars bring less that is new'],
  change: ['the cell changes more often', 'the cell changes less often'],
  speed: ['strokes follow one another faster', 'strokes follow one another less fast'],
  dynamics: ['loudness changes more often', 'loudness changes less often'],
};

function differenceText(first: Subject, second: Subject, part: PartName, points: number): string {
  if (part === 'alone' || part === 'foot' || part === 'lead') return strokesText(first, second, part);
  const pair = MORE_OR_LESS[part] ?? [`more ${part}`, `less ${part}`];
  return points > 0 ? pair[0] : pair[1];
}

function reasonsList(reasons: readonly Difference[]): string {
  return listed(
    reasons
      .slice(0, NAMED_REASONS)
      .map(({ text, points }) => `${text} (${points > 0 ? '+' : '−'}${Math.abs(points).toFixed(1)})`),
  );
}

function sentence(first: Subject, second: Subject, points: number, reasons: readonly Difference[]): string {
  if (Math.abs(points) < NO_DIFFERENCE)
    return `${second.number} is as hard as ${first.number}: ${points.toFixed(1)} points apart.`;
  const sign = Math.sign(points);
  const why = reasons.filter((reason) => Math.sign(reason.points) === sign);
  const against = reasons.filter((reason) => Math.sign(reason.points) === -sign);
  const comparative = points > 0 ? 'harder' : 'easier';
  const other = points > 0 ? 'easier' : 'harder';
  const but = against.length > 0 ? `; what makes it ${other}: ${reasonsList(against)}` : '';
  return `${second.number} is ${comparative} than ${first.number} because ${reasonsList(why)}${but}.`;
}

/** Why the second bar is harder, or easier, than the first over the lesson's groove. */
export function compare(lesson: Lesson, first: Exercise, second: Exercise): Comparison {
  const a = subjectOf(lesson, first);
  const b = subjectOf(lesson, second);
  const reasons = PARTS.map((part): Difference => {
    const of = (subject: Subject) => subject.grade.parts.find((each) => each.part === part)?.points ?? 0;
    const points = of(b) - of(a);
    return { part, points, text: differenceText(a, b, part, points) };
  })
    .filter((reason) => Math.abs(reason.points) >= NO_DIFFERENCE)
    .sort(byWeight);
  const points = b.grade.points - a.grade.points;
  return { points, reasons, text: sentence(a, b, points, reasons) };
}
