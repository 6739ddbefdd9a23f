/**
 * An exercise as somebody played it: its bars in the order in which they came, every place at the time at which it was
 * struck.
 *
 * Conventions: seconds of the take; places in whole notes from its first bar that was followed; bars from 1.
 */
import {
  add,
  type Bpm,
  defaultForm,
  type Form,
  type FullReport,
  formIn,
  fraction,
  type Lesson,
  type Meter,
  multiply,
  type Performance,
  perform,
  type ReportStroke,
  Seconds,
  type Stroke,
  type Voice,
} from '@shedbook/core';
import { median } from '@shedbook/signal';
import { type Clock, type Knot, playedClock } from './clock.ts';
import { landingsOf } from './landings.ts';
import { createProgram, type Program, type ProgramStroke } from './program.ts';

/** What is needed of a report to follow a take. */
export type Followed = Pick<FullReport, 'strokes' | 'tempo' | 'playedBars' | 'lead'>;

/** An exercise as it was played. */
export interface AsPlayed {
  /** The bars that were played, numbered anew. */
  readonly program: Program;
  /** The bar of the form that each of them is. */
  readonly formBars: readonly number[];
  /** Seconds of the take. */
  readonly clock: Clock;
  /** Each written stroke when it was struck, or would have been: seconds of the take, the count-in left out. */
  readonly strokes: readonly Stroke[];
}

/** A bar of the take. */
interface TakeBar {
  readonly formBar: number;
  /** Its lines by the take's own pulse. */
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/**
 * The bars of a take from the first to the last that is one of the form; one between them that is none is taken for the
 * one that was due.
 */
function takeBars({ tempo, playedBars }: Followed, { bars, end }: Program): readonly TakeBar[] {
  const first = playedBars.findIndex((bar) => bar !== null);
  const last = playedBars.findLastIndex((bar) => bar !== null);
  const wholeNotes = end / Math.max(1, bars.length);
  let before = 0;
  return tempo.slice(Math.max(0, first), last + 1).map(({ timeSeconds, bpm }, index): TakeBar => {
    const at = first + index;
    before = playedBars[at] ?? (before % bars.length) + 1;
    const toSeconds = tempo[at + 1]?.timeSeconds ?? timeSeconds + (240 * wholeNotes) / bpm;
    return { formBar: before, fromSeconds: timeSeconds, toSeconds };
  });
}

/** By what the bars of a take are numbered: as they came, or as the bars of the form that they are. */
type Numbering = 'as they came' | 'by the form';

/** A program whose bars come in another order, or more than once. */
export function inTakeOrder(
  program: Program,
  formBars: readonly number[],
  numbering: Numbering = 'as they came',
): Program {
  const numberOf = (index: number, formBar: number) => (numbering === 'by the form' ? formBar : index + 1);
  const length = program.end / Math.max(1, program.bars.length);
  const moved = <T extends { readonly place: number }>(each: T, index: number, formBar: number): T => ({
    ...each,
    place: each.place + (index - formBar + 1) * length,
  });
  const strokesOf = (all: readonly ProgramStroke[]) =>
    formBars.flatMap((formBar, index) =>
      all
        .filter(({ role, written }) => role !== 'count-in' && written.bar === formBar)
        .map((each) => ({
          ...moved(each, index, formBar),
          written: { ...each.written, bar: numberOf(index, formBar) },
        })),
    );
  const numbered = <T extends { readonly place: number; readonly bar: number }>(all: readonly T[]) =>
    formBars.flatMap((formBar, index) =>
      all
        .filter(({ bar }) => bar === formBar)
        .map((each): T => ({ ...moved(each, index, formBar), bar: numberOf(index, formBar) })),
    );
  const countIn = program.strokes.filter(({ role }) => role === 'count-in');
  return {
    ...program,
    shape: `${program.shape} as bars ${formBars.join(',')}`,
    strokes: [...countIn, ...strokesOf(program.strokes)],
    clicks: strokesOf(program.clicks),
    beats: numbered(program.beats),
    bars: numbered(program.bars),
    end: formBars.length * length,
  };
}

function keyOf(bar: number, voice: string, beat: number, slot: number): string {
  return `${bar} ${voice} ${beat} ${slot}`;
}

/** When each stroke of a program was struck, by its bar of the take, its voice and its place. */
function struckTimes(
  strokes: readonly ReportStroke[],
  program: Program,
  bars: readonly TakeBar[],
): ReadonlyMap<string, number> {
  const length = program.end / Math.max(1, bars.length);
  const phases = new Map(
    program.strokes.map(({ voice, written: { bar, beat, slot }, place }) => [
      keyOf(bar, voice, beat, slot),
      place / length - (bar - 1),
    ]),
  );
  const times = new Map<string, number>();
  for (const { written, voice, timeSeconds } of strokes) {
    if (!written) continue;
    const near = bars.flatMap(({ formBar, fromSeconds, toSeconds }, index) => {
      const key = keyOf(index + 1, voice, written.beat, written.slot);
      const phase = formBar === written.bar ? phases.get(key) : undefined;
      if (phase === undefined) return [];
      return [{ key, away: Math.abs(fromSeconds + phase * (toSeconds - fromSeconds) - timeSeconds) }];
    });
    const nearest = near.toSorted((a, b) => a.away - b.away)[0];
    if (nearest) times.set(nearest.key, timeSeconds);
  }
  return times;
}

/** Whose time counts where several strike at once: the exercise's, then the lead voice's, then all of them. */
function rankOf({ role, voice }: ProgramStroke, lead: Voice): number {
  if (role === 'pattern' || role === 'ending') return 0;
  return voice === lead ? 1 : 2;
}

/** Places are the same where they round to the same. */
const sameness = (place: number) => Math.round(place * 1e6);

/** Where the ball comes down, at the time of the strokes that are due there; nothing where none of them was heard. */
function landingKnots(program: Program, times: ReadonlyMap<string, number>, lead: Voice): readonly Knot[] {
  const landings = new Set(landingsOf(program).map(({ place }) => sameness(place)));
  const heard = new Map<number, { readonly place: number; readonly byRank: number[][] }>();
  for (const stroke of program.strokes) {
    const { place, voice, written } = stroke;
    const seconds = times.get(keyOf(written.bar, voice, written.beat, written.slot));
    if (seconds === undefined || !landings.has(sameness(place))) continue;
    const here = heard.get(sameness(place)) ?? { place, byRank: [[], [], []] };
    heard.set(sameness(place), here);
    here.byRank[rankOf(stroke, lead)]?.push(seconds);
  }
  return [...heard.values()].map(({ place, byRank }) => ({
    place,
    seconds: median(byRank.find((times) => times.length > 0) ?? []),
  }));
}

/** The bar lines at which nothing was heard, by the pulse; what comes before the first and after the last. */
function pulseKnots(program: Program, bars: readonly TakeBar[], heard: readonly Knot[]): readonly Knot[] {
  const length = program.end / Math.max(1, bars.length);
  const known = new Set(heard.map(({ place }) => sameness(place)));
  const lines = bars.map(({ fromSeconds }, index) => ({ place: index * length, seconds: fromSeconds }));
  const [first, last] = [bars[0], bars.at(-1)];
  if (!first || !last) return [];
  const before = {
    place: program.start,
    seconds: first.fromSeconds + (program.start / length) * (first.toSeconds - first.fromSeconds),
  };
  const all = [before, ...lines, { place: program.end, seconds: last.toSeconds }];
  return all.filter(({ place }) => !known.has(sameness(place)));
}

/** The form that was asked: as a program, and as it is performed at the tempo of the take. */
export interface AskedForm {
  readonly program: Program;
  readonly performance: Performance;
  readonly meter: Meter;
}

/** The strokes of a form in the order of the take, when they were struck. */
function strokesPlayed(
  { performance, meter }: Pick<AskedForm, 'performance' | 'meter'>,
  { program, formBars, clock }: Omit<AsPlayed, 'strokes'>,
  times: ReadonlyMap<string, number>,
): readonly Stroke[] {
  const places = new Map(
    program.strokes.map(({ voice, written: { bar, beat, slot }, place }) => [
      keyOf(bar, voice, beat, slot),
      place,
    ]),
  );
  const played = formBars.flatMap((formBar, index) =>
    performance.strokes.flatMap((stroke): Stroke[] => {
      const { voice, written, role } = stroke;
      if (role === 'count-in' || written.bar !== formBar) return [];
      const key = keyOf(index + 1, voice, written.beat, written.slot);
      const seconds = times.get(key) ?? clock.secondsAt(places.get(key) ?? 0);
      const at = add(stroke.at, multiply(meter.bar, fraction(index + 1 - formBar)));
      return [{ ...stroke, at, written: { ...written, bar: index + 1 }, timeSeconds: Seconds(seconds) }];
    }),
  );
  return played.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

/** An exercise that was played, and what was heard of it. */
export interface HeardExercise {
  readonly exercise: number;
  /** Null for the form that plays where none is named. */
  readonly form: Form | null;
  readonly report: FullReport;
}

/** An exercise of a section of a lesson as it was played, and the form that was asked for. */
export interface FollowedExercise {
  readonly form: Form;
  /** Quarter notes a minute, as it was played. */
  readonly bpm: Bpm;
  /** The form as it is written. */
  readonly asked: Program;
  readonly played: AsPlayed;
}

/** Follows an exercise of a section of a lesson. @throws RangeError where nothing of it was followed */
export function followExercise(
  lesson: Lesson,
  { exercise, form: named, report }: HeardExercise,
): FollowedExercise {
  const { bpm } = report.alignment;
  const form = named ? formIn(lesson, named) : defaultForm(lesson);
  const asked = { exercise, form, bpm, layers: lesson.layers.length };
  const program = createProgram(lesson, asked);
  const played = followTake({ program, performance: perform(lesson, asked), meter: lesson.meter }, report);
  return { form, bpm, asked: program, played };
}

/** An exercise as it was played. @throws RangeError where nothing was followed */
export function followTake(form: AskedForm, report: Followed): AsPlayed {
  const bars = takeBars(report, form.program);
  const formBars = bars.map(({ formBar }) => formBar);
  const program = inTakeOrder(form.program, formBars);
  const times = struckTimes(report.strokes, program, bars);
  const heard = landingKnots(program, times, report.lead);
  const clock = playedClock([...heard, ...pulseKnots(program, bars, heard)]);
  const played = { program, formBars, clock };
  return { ...played, strokes: strokesPlayed(form, played, times) };
}
