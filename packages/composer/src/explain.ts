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
import type { ComparisonFact, DifferenceFact, Fall, WorthFact } from './difference-fact.ts';
import { type Grade, type GradedPart, gradeLines, gradeSettingsOf } from './grade.ts';
import type { Company } from './ground.ts';
import { PARTS, type PartName } from './parts.data.ts';
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
  readonly what: DifferenceFact;
}

/** Two bars compared. */
export interface Comparison {
  /** Points of the second less those of the first. */
  readonly points: number;
  /** Heaviest first. */
  readonly reasons: readonly Difference[];
  /** In one sentence. */
  readonly fact: ComparisonFact;
}

/** A difference of fewer points is none. */
const NO_DIFFERENCE = 0.005;

/** Points are said with one decimal: what is worth less is not said. */
const SAID_POINTS = 0.05;

/** Reasons that a comparison names on either side, at most. */
const NAMED_REASONS = 3;

interface PlacedStroke {
  readonly kind: Fall;
  readonly place: PlaceFact;
  readonly company: Company;
}

interface Subject {
  readonly number: number;
  readonly text: string;
  readonly grade: Grade;
  readonly strokes: readonly PlacedStroke[];
}

/** With whom a stroke falls for the most part. */
function kindOf(company: Company): Fall {
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
        return {
          kind: kindOf(company),
          place: placed(placeInBar(beat, slot, cell.marks.length), bar, bars),
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

function fallingFact(subject: Subject, kind: Fall): ReasonFact {
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

/** The reasons that are said: with one decimal the others are worth nothing. */
export function saidReasons(reasons: readonly Reason[]): readonly Reason[] {
  return reasons.filter(({ points }) => points >= SAID_POINTS);
}

/** The places of the one that are none of the other's. */
function placesOnlyOf(one: readonly PlaceFact[], other: readonly PlaceFact[]): readonly PlaceFact[] {
  const keys = new Set(other.map((place) => JSON.stringify(place)));
  return one.filter((place) => !keys.has(JSON.stringify(place)));
}

function fallDifference(first: Subject, second: Subject, fall: Fall): DifferenceFact {
  const of = (subject: Subject) =>
    subject.strokes.filter((stroke) => stroke.kind === fall).map((stroke) => stroke.place);
  const come = placesOnlyOf(of(second), of(first));
  const gone = placesOnlyOf(of(first), of(second));
  if (come.length > 0 && gone.length > 0) return { fact: `moved-${fall}`, come, strokes: come.length, gone };
  const places = [...come, ...gone];
  return { fact: come.length > 0 ? `more-${fall}` : `fewer-${fall}`, strokes: places.length, places };
}

function differenceFact(first: Subject, second: Subject, part: PartName, points: number): DifferenceFact {
  if (part === 'alone' || part === 'foot' || part === 'lead') return fallDifference(first, second, part);
  return { fact: points > 0 ? `more-of-${part}` : `less-of-${part}` };
}

/** The heaviest differences of one direction, with what they are worth; those that are worth nothing to speak of are left out. */
function worthOf(reasons: readonly Difference[], sign: number): readonly WorthFact[] {
  const said = reasons.filter(({ points }) => points * sign >= SAID_POINTS);
  return said.slice(0, NAMED_REASONS).map(({ what, points }) => ({
    fact: points > 0 ? 'worth-more' : 'worth-less',
    what,
    points: Math.abs(points),
  }));
}

function comparisonFact(
  { number: other }: Subject,
  { number }: Subject,
  points: number,
  reasons: readonly Difference[],
): ComparisonFact {
  const sign = Math.sign(points);
  const why = worthOf(reasons, sign);
  const but = worthOf(reasons, -sign);
  if (Math.abs(points) < SAID_POINTS || why.length === 0)
    return { fact: 'as-hard', number, other, points: Math.abs(points) };
  const kind = points > 0 ? 'harder' : 'easier';
  return but.length === 0
    ? { fact: kind, number, other, why }
    : { fact: `${kind}-but`, number, other, why, but };
}

/** Why the second bar is harder, or easier, than the first over the lesson's groove. */
export function compare(lesson: Lesson, first: Exercise, second: Exercise): Comparison {
  const a = subjectOf(lesson, first);
  const b = subjectOf(lesson, second);
  const reasons = PARTS.map((part): Difference => {
    const of = (subject: Subject) => subject.grade.parts.find((each) => each.part === part)?.points ?? 0;
    const points = of(b) - of(a);
    return { part, points, what: differenceFact(a, b, part, points) };
  })
    .filter((reason) => Math.abs(reason.points) >= NO_DIFFERENCE)
    .sort(byWeight);
  const points = b.grade.points - a.grade.points;
  return { points, reasons, fact: comparisonFact(a, b, points, reasons) };
}
