/**
 * The pen over the stand: strokes, what is missing, and what is too many, each on the picture of its bar.
 *
 * Conventions: seconds of the audio context; bars of the form from 1.
 */
import {
  beatStarts,
  isGuess,
  isVoice,
  type Lesson,
  type ReportStroke,
  type TakeReport,
  toNumber,
  type Unheard,
  type Voice,
} from '@shedbook/core';
import { leftOut, type PlayedTask } from '@shedbook/judge';
import type { PackBar } from '@shedbook/pack';
import { type Program, shownBar, xAt } from '@shedbook/playing';
import type { HeardStroke, LoopTime } from '../ear/ear-messages.ts';
import type { Hearing, Stretch, ToldBars } from '../ear/hearing.ts';
import type { PracticeSession } from '../session/practice-session.tsx';
import type { Pictures } from '../tiles/pictures.ts';
import { tellDrawn } from './drawn.ts';
import { LiveMarks, type Shown } from './live-marks.ts';

/** From this confidence on, a stroke too many is shown. */
const SURE = 0.5;

/** The picture that shows a bar of the form, or null. */
function shownOf(program: Program, bar: number, pictures: Pictures): Shown | null {
  const played = program.bars[bar - 1];
  if (!played) return null;
  const sizes = { exercise: pictures.exercise.length, groove: pictures.groove.length };
  const { on, index } = shownBar(program, played, sizes);
  const tile = pictures[on][index];
  const picture = tile && document.querySelector(`[data-on="${on}"][data-bar="${tile.bar}"]`);
  return tile && picture ? { picture, bar: tile } : null;
}

/** Where a share of a bar stands: its beat from 0, and the phase inside it. */
function beatAt(lesson: Lesson, share: number): readonly [number, number] {
  const whole = toNumber(lesson.meter.bar);
  const starts = beatStarts(lesson.meter).map(toNumber);
  const at = share * whole;
  const beat = Math.max(
    0,
    starts.findLastIndex((start) => start <= at + 1e-9),
  );
  const from = starts[beat] ?? 0;
  return [beat, (at - from) / ((starts[beat + 1] ?? whole) - from)];
}

/** What is practised now, and its pictures. */
export interface Drawing {
  readonly session: PracticeSession;
  readonly pictures: Pictures;
}

/** Whether a bar of the form is for the student to play: all of them, or those that the recording leaves. */
function isStudents(program: Program, bar: number): boolean {
  const leaves = program.bars.some((each) => each.play === 'rest');
  return !leaves || program.bars[bar - 1]?.play !== 'pattern';
}

interface WrittenStroke {
  readonly voice: Voice;
  readonly beat: number;
  readonly slot: number;
}

/** The strokes of a bar: those that play, or, where the student answers, those that its picture shows. */
function writtenIn(program: Program, bar: number, tile: PackBar): readonly WrittenStroke[] {
  if (program.bars[bar - 1]?.play === 'rest') return tile.slots.filter((slot) => slot.struck);
  return program.strokes.flatMap(({ voice, written, role }): WrittenStroke[] => {
    const isPlayed = isVoice(voice) && written.bar === bar && role !== 'count-in';
    return isPlayed ? [{ voice, beat: written.beat, slot: written.slot }] : [];
  });
}

/** A bar of a loop that is over, as it is drawn. */
interface DrawnBar {
  readonly shown: Shown;
  readonly program: Program;
  /** Which bar of the form, from 1. */
  readonly bar: number;
  readonly turn: number;
  readonly bpm: number;
  /** The voices that are left to the page. */
  readonly out: readonly Voice[];
}

/** Places of a bar, by their voices. */
function placesIn(places: TakeReport['missed'] | undefined, bar: number): readonly WrittenStroke[] {
  return (places ?? []).filter((place) => place.bar === bar);
}

/** The voices that a report cannot tell for sure, or not at all: what is heard of them at once is to be taken with care. */
function unsureIn({ unheard = [] }: TakeReport): ReadonlySet<Voice> {
  const isUnsure = ({ reason }: Unheard) => reason === 'hard-to-tell' || reason === 'not-heard';
  return new Set(unheard.flatMap((one) => ('voice' in one && isUnsure(one) ? [one.voice] : [])));
}

/** A pen over the stand. */
export class Pen {
  readonly #hearing: Hearing;
  readonly #marks = new LiveMarks();
  readonly #now: () => Drawing;
  /** Bars of stretches before this one, and the last bar drawn in. */
  #before = 0;
  #last = 0;
  /** The name of the stretch that is drawn, and what it goes along with. */
  #stretch: string | null = null;
  #program: Program | null = null;
  /** The voices that the ear is not sure of, by the last bar that something was said of. */
  #unsure: ReadonlySet<Voice> = new Set();

  constructor(hearing: Hearing, now: () => Drawing) {
    this.#hearing = hearing;
    this.#now = now;
  }

  stretch({ id }: Stretch): void {
    this.#marks.clear();
    this.#before = this.#last + 1;
    this.#stretch = id;
    this.#unsure = new Set();
  }

  /** A bar of what plays has begun. */
  bar(program: Program): void {
    this.#program = program;
  }

  clear(): void {
    this.#marks.clear();
  }

  /** Nothing is listened to any more. */
  rest(): void {
    this.#marks.fade();
  }

  /** The number of a bar (from 1) of a loop (from 0) among all bars that were played. */
  #turn(program: Program, loop: number, bar: number): number {
    const bars = this.#barsOf(program);
    const turn = this.#before + loop * bars + ((bar - 1) % bars);
    this.#last = Math.max(this.#last, turn);
    return turn;
  }

  stroke(stroke: HeardStroke, task: PlayedTask): void {
    const { session, pictures } = this.#now();
    const program = session.player.heard()?.program;
    if (program) this.#program = program;
    if (!program || leftOut(task).includes(stroke.voice)) return;
    if (!stroke.written) {
      this.#extra(stroke, program, pictures);
      return;
    }
    const { loop, bar, beat, slot } = stroke.written;
    const shown = shownOf(program, bar, pictures);
    if (!shown) return;
    const bpm = this.#hearing.loopAt(stroke.contextSeconds)?.loop.bpm ?? task.bpm;
    const marked = { shown, voice: stroke.voice, beat, slot, turn: this.#turn(program, loop, bar) };
    const struck = {
      offsetMs: stroke.offsetMs ?? 0,
      isSure: stroke.isSure && !this.#unsure.has(stroke.voice),
    };
    if (this.#marks.struck(marked, struck, session.lesson.meter, bpm)) this.#tell(stroke);
  }

  #extra(stroke: HeardStroke, program: Program, pictures: Pictures): void {
    if (stroke.confidence < SURE || !stroke.isSure || this.#unsure.has(stroke.voice)) return;
    const seconds = stroke.contextSeconds - this.#latencySeconds;
    const at = this.#hearing.loopAt(seconds);
    if (!at) return;
    const place = this.#barsInto(program, at.loop, seconds);
    const bar = Math.floor(place) + 1;
    const shown = shownOf(program, bar, pictures);
    if (!shown || !isStudents(program, bar)) return;
    const x = xAt(shown.bar, ...beatAt(this.#now().session.lesson, place % 1));
    this.#marks.extra(shown, stroke.voice, x, this.#turn(program, at.number, bar));
    this.#tell(stroke);
  }

  get #latencySeconds(): number {
    return this.#hearing.ear.state().latencyMs / 1000;
  }

  /** Bars in one loop. */
  #barsOf(program: Program): number {
    return program.bars.length / this.#now().session.form.repeat;
  }

  /** How many bars into a loop a moment lies. */
  #barsInto(program: Program, { startSeconds, endSeconds }: LoopTime, seconds: number): number {
    return ((seconds - startSeconds) / (endSeconds - startSeconds)) * this.#barsOf(program);
  }

  #tell(stroke: HeardStroke): void {
    tellDrawn(this.#now().session.player.context(), stroke, this.#hearing.ear.state().input);
  }

  /**
   * Bars are over: what a report says of them takes the place of what was drawn at once, and of the bars before them, which may
   * be known only now.
   */
  told(told: ToldBars, { id, task }: Stretch): void {
    const program = this.#program;
    if (!program || id !== this.#stretch) return;
    const { report } = told.heard;
    const over = told.bar ?? this.#barsOf(program);
    for (let bar = 1; bar <= over; bar += 1) {
      const shown = shownOf(program, bar, this.#now().pictures);
      if (!shown || !isStudents(program, bar)) continue;
      const turn = this.#turn(program, told.number, bar);
      const drawn = { shown, program, bar, turn, bpm: told.loop.bpm, out: leftOut(task) };
      if (report) this.#draw(drawn, report, told);
      else this.#drawRefused(drawn, told);
    }
    if (report) this.#unsure = unsureIn(report);
  }

  #draw(drawn: DrawnBar, report: TakeReport, told: ToldBars): void {
    const { shown, bar, turn, bpm, out } = drawn;
    const { meter } = this.#now().session.lesson;
    const at = ({ voice, beat, slot }: WrittenStroke) => ({ shown, voice, beat, slot, turn });
    const isIn = (stroke: { readonly voice: Voice }) => !out.includes(stroke.voice);
    for (const place of placesIn(report.missed, bar).filter(isIn)) {
      if (isGuess(report, place.voice)) this.#marks.unsure(at(place));
      else this.#marks.missed(at(place));
    }
    for (const place of [...placesIn(report.unknown, bar), ...placesIn(report.covered, bar)].filter(isIn))
      this.#marks.unsure(at(place));
    this.#marks.withoutExtras(shown, turn);
    for (const stroke of report.strokes.filter(isIn)) {
      const { voice, written, offsetMs } = stroke;
      const isSure = !isGuess(report, voice);
      if (!written) this.#drawExtra(drawn, stroke, told, isSure);
      else if (written.bar === bar)
        this.#marks.struck(at({ ...written, voice }), { offsetMs: offsetMs ?? 0, isSure }, meter, bpm);
    }
  }

  /** A stroke too many, where it lies in the bar and the ear is sure of its voice. */
  #drawExtra(
    { shown, program, bar, turn }: DrawnBar,
    { voice, timeSeconds, confidence }: ReportStroke,
    { loop, originSeconds }: ToldBars,
    isSure: boolean,
  ): void {
    const seconds = originSeconds + timeSeconds - this.#latencySeconds;
    const place = this.#barsInto(program, loop, seconds);
    if (!isSure || confidence < SURE || Math.floor(place) + 1 !== bar) return;
    const x = xAt(shown.bar, ...beatAt(this.#now().session.lesson, place % 1));
    this.#marks.extra(shown, voice, x, turn);
  }

  /** Where nobody played all that is written is missing; where it cannot be said whether somebody did, all is unsure. */
  #drawRefused({ shown, program, bar, turn, out }: DrawnBar, { heard }: ToldBars): void {
    const isMissing = heard.refusal?.fact === 'nothing-played';
    this.#marks.withoutExtras(shown, turn);
    for (const { voice, beat, slot } of writtenIn(program, bar, shown.bar)) {
      if (out.includes(voice)) continue;
      const marked = { shown, voice, beat, slot, turn };
      if (isMissing) this.#marks.missed(marked);
      else this.#marks.unsure(marked);
    }
  }
}
