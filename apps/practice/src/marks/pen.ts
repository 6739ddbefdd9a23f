/**
 * The pen over the stand: strokes, what is missing, and what is too many, each on the picture of its bar.
 *
 * Conventions: seconds of the audio context; bars of the form from 1.
 */
import { beatStarts, isVoice, type Lesson, toNumber, type Voice } from '@shedbook/core';
import { leftOut, type PlayedTask } from '@shedbook/judge';
import type { PackBar } from '@shedbook/pack';
import { type Program, shownBar, xAt } from '@shedbook/playing';
import type { HeardStroke } from '../ear/ear-messages.ts';
import type { Hearing } from '../ear/hearing.ts';
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

/** A pen over the stand. */
export class Pen {
  readonly #hearing: Hearing;
  readonly #marks = new LiveMarks();
  readonly #now: () => Drawing;
  /** Bars of stretches before this one, and the last bar drawn in. */
  #before = 0;
  #last = 0;

  constructor(hearing: Hearing, now: () => Drawing) {
    this.#hearing = hearing;
    this.#now = now;
  }

  stretch(): void {
    this.#marks.clear();
    this.#before = this.#last + 1;
  }

  clear(): void {
    this.#marks.clear();
  }

  /** The number of a bar (from 1) of a loop (from 0) among all bars that were played. */
  #turn(program: Program, loop: number, bar: number): number {
    const bars = program.bars.length / this.#now().session.form.repeat;
    const turn = this.#before + loop * bars + ((bar - 1) % bars);
    this.#last = Math.max(this.#last, turn);
    return turn;
  }

  stroke(stroke: HeardStroke, task: PlayedTask): void {
    const { session, pictures } = this.#now();
    const program = session.player.heard()?.program;
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
    if (this.#marks.struck(marked, stroke.offsetMs ?? 0, session.lesson.meter, bpm)) {
      this.#tell(stroke);
    }
  }

  #extra(stroke: HeardStroke, program: Program, pictures: Pictures): void {
    if (stroke.confidence < SURE) return;
    const seconds = stroke.contextSeconds - this.#hearing.ear.state().latencyMs / 1000;
    const at = this.#hearing.loopAt(seconds);
    if (!at) return;
    const { lesson, form } = this.#now().session;
    const { startSeconds, endSeconds } = at.loop;
    const bars = program.bars.length / form.repeat;
    const place = ((seconds - startSeconds) / (endSeconds - startSeconds)) * bars;
    const bar = Math.floor(place) + 1;
    const shown = shownOf(program, bar, pictures);
    if (!shown || !isStudents(program, bar)) return;
    const x = xAt(shown.bar, ...beatAt(lesson, place % 1));
    this.#marks.extra(shown, stroke.voice, x, this.#turn(program, at.number, bar));
    this.#tell(stroke);
  }

  #tell(stroke: HeardStroke): void {
    tellDrawn(this.#now().session.player.context(), stroke, this.#hearing.ear.state().input);
  }

  /** A bar of the form is over: what did not come in it is missing. */
  over(program: Program, bar: number, startSeconds: number): void {
    const { session, pictures } = this.#now();
    const at = this.#hearing.loopAt(startSeconds);
    const shown = shownOf(program, bar, pictures);
    if (!at || !shown || !isStudents(program, bar)) return;
    const out = leftOut({ lesson: session.lesson, mine: session.choice.mine });
    const turn = this.#turn(program, at.number, bar);
    for (const { voice, beat, slot } of writtenIn(program, bar, shown.bar)) {
      if (!out.includes(voice)) this.#marks.missed({ shown, voice, beat, slot, turn });
    }
  }
}
