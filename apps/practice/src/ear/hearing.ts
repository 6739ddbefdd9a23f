/**
 * Hearing oneself, from the first block to the verdict: the ear follows what plays, loops are judged, strokes and
 * takes are handed on.
 *
 * Conventions: seconds of the audio context.
 */
import type { TakeReport, Voice } from '@shedbook/core';
import { type Judgement, judgeTaskOf, type Level, type PlayedTask } from '@shedbook/judge';
import type { Listened } from '@shedbook/listen';
import type { Player } from '@shedbook/stand';
import { newId } from '../kept/device-name.ts';
import { Ear, type KitBook, type LatencyBook } from './ear.ts';
import type { EarAsked, EarReport, HeardStroke, LoopTime } from './ear-messages.ts';
import { FirstLateness } from './first-lateness.ts';
import { type Follow, LoopFollower } from './loop-follower.ts';

/** A loop that was judged. */
export interface JudgedLoop {
  /** Name of the stretch that it lies in. */
  readonly stretch: string;
  /** Which loop of the stretch, from 0. */
  readonly number: number;
  readonly loop: LoopTime;
  readonly task: PlayedTask;
  readonly judgement: Judgement;
  /** Spread of each voice of which enough was heard, in milliseconds. */
  readonly spreadsMs: Readonly<Partial<Record<Voice, number>>>;
}

/** One stretch of playing one exercise, as it was heard. */
export interface Stretch {
  readonly id: string;
  readonly startedAt: Date;
  readonly task: PlayedTask;
  readonly loops: readonly JudgedLoop[];
}

/** A stretch that is over, with its take. */
export interface StretchEnded {
  readonly stretch: Stretch;
  readonly take: Extract<EarReport, { kind: 'take' }>;
  readonly kind: 'audio' | 'midi';
  readonly latencySeconds: number;
}

/** What a report says of bars that are over. */
export interface ToldBars {
  /** Which loop of the stretch, from 0. */
  readonly number: number;
  readonly loop: LoopTime;
  /** Up to which bar of the loop, from 1; null where it is all of them. */
  readonly bar: number | null;
  readonly heard: Listened;
  /** When the stream began that the report counts its seconds from. */
  readonly originSeconds: number;
}

/** What happens while one is heard. */
export type HearingEvent =
  /** Rounds that are judged are added to the stretch while it goes on. */
  | { readonly kind: 'stretch begins'; readonly stretch: Stretch; readonly asked: EarAsked | null }
  /** The next piece of the recording of a stretch. */
  | { readonly kind: 'sound'; readonly id: string; readonly samples: Int16Array<ArrayBuffer> }
  | { readonly kind: 'strokes'; readonly strokes: readonly HeardStroke[]; readonly task: PlayedTask }
  /** Once bars are over: what is said of them takes the place of what was said at once. */
  | { readonly kind: 'told'; readonly told: ToldBars; readonly stretch: Stretch }
  | { readonly kind: 'judged'; readonly judged: JudgedLoop }
  | { readonly kind: 'stretch ended'; readonly ended: StretchEnded };

/** What the page says of what is played now. */
export interface Practised {
  readonly task: Omit<PlayedTask, 'bpm'>;
  readonly level: Level;
  /** What every stroke is, where one plays on one surface; null on a drum set. */
  readonly onPad: Voice | null;
}

/** Milliseconds between looks at the player. */
const LOOK_MS = 40;

/** Bar lines nearer than this are one. */
const SAME_SECONDS = 0.002;

/** A stretch, and what only this file needs of it. */
interface OpenStretch extends Stretch {
  readonly loops: JudgedLoop[];
  originSeconds: number;
  /** What was heard in the last loops, all at one tempo. */
  readonly heard: { readonly bpm: number; readonly report: TakeReport }[];
}

/** Strokes of a voice in a round from which on it has a spread. */
const FEWEST_STROKES = 3;

/** So many loops before the one that is judged are kept in mind: what comes back in them is no slip of the ear. */
const LOOPS_IN_MIND = 3;

function spreadsOf(report: TakeReport | null): JudgedLoop['spreadsMs'] {
  const voices = Object.entries(report?.voices ?? {}).filter(([, { hits }]) => hits >= FEWEST_STROKES);
  return Object.fromEntries(voices.map(([voice, { offsetMs }]) => [voice, Number(offsetMs.spread)]));
}

/** What judges a loop. */
type Judging = typeof import('./judge-loop.ts');

/** Hearing. */
export class Hearing {
  readonly ear: Ear;
  readonly #player: Player;
  readonly #practised: () => Practised;
  readonly #listeners = new Set<(event: HearingEvent) => void>();
  readonly #stretches = new Map<string, OpenStretch>();
  #judging: Judging | null = null;
  readonly #waiting: ((judging: Judging | null) => void)[] = [];
  #follower = new LoopFollower();
  #lateness = new FirstLateness();
  #current: OpenStretch | null = null;
  #timer: ReturnType<typeof setInterval> | null = null;
  /** Loops of the current stretch that were announced to the ear and not broken off. */
  #loops: LoopTime[] = [];

  /** @param practised what is played now; asked whenever it matters */
  constructor(player: Player, practised: () => Practised, book: LatencyBook, kits: KitBook) {
    this.#player = player;
    this.#practised = practised;
    this.ear = new Ear(book, kits);
    this.ear.onReport((report) => this.#hear(report));
    this.ear.subscribe(() => {
      if (this.ear.state().phase === 'off') this.#rest();
    });
  }

  /** Hands everything that happens to a listener. @returns how to stop. */
  listen(listener: (event: HearingEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Begins to hear with a microphone or a kit. */
  async open(input: 'microphone' | 'kit'): Promise<void> {
    const context = this.#player.context();
    await context.resume();
    await this.ear.open(input, context, this.#player.output());
    if (this.ear.state().phase !== 'on') return;
    this.#follower = new LoopFollower();
    this.#lateness = new FirstLateness();
    this.#timer ??= setInterval(() => this.#look(), LOOK_MS);
  }

  /** Ends it. */
  close(): void {
    this.ear.close();
  }

  /** Whether a stretch is still being heard. */
  isOpen(id: string): boolean {
    return this.#stretches.has(id);
  }

  #rest(): void {
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#timer = null;
    this.#current = null;
    this.#stretches.clear();
  }

  #tell(event: HearingEvent): void {
    for (const listener of [...this.#listeners]) listener(event);
  }

  #look(): void {
    const { form, mine } = this.#practised().task;
    // Who takes on another limb, or leaves one, is listened to anew from the next loop on.
    if (this.#current && this.#current.task.mine.join() !== mine.join()) {
      this.#breakOff(this.#player.context().currentTime);
      this.#follower = new LoopFollower();
    }
    for (const follow of this.#follower.look(this.#player.heard(), form.repeat)) this.#follow(follow);
  }

  #follow(follow: Follow): void {
    if (follow.kind === 'exercise') this.#begin(follow.exercise);
    else if (follow.kind === 'break off') this.#breakOff(follow.seconds);
    else if (follow.kind === 'loop') this.#loop(follow.loop);
    else this.#end();
  }

  #begin(exercise: number | null): void {
    const { task, onPad } = this.#practised();
    const id = newId();
    const whole = { ...task, exercise, bpm: this.#player.heard()?.bpm ?? task.lesson.tempo.startBpm };
    this.#current = { id, startedAt: new Date(), task: whole, loops: [], heard: [], originSeconds: 0 };
    this.#stretches.set(id, this.#current);
    this.#loops = [];
    const { lesson, form, bpm, plays = [] } = judgeTaskOf(whole);
    const what = { lesson, exercise, form, plays, ...(bpm === undefined ? {} : { bpm }) };
    const asked = this.ear.ask(id, what, onPad);
    this.#current.originSeconds = asked?.originSeconds ?? 0;
    this.#whenJudging(() => undefined);
    this.#tell({ kind: 'stretch begins', stretch: this.#current, asked });
  }

  /** The loop of the current stretch that a moment lies in, with its number from 0, or null. */
  loopAt(seconds: number): { readonly number: number; readonly loop: LoopTime } | null {
    const number = this.#loops.findLastIndex((loop) => loop.startSeconds <= seconds);
    const loop = this.#loops[number];
    return loop && seconds < loop.endSeconds ? { number, loop } : null;
  }

  #loop(loop: LoopTime): void {
    this.ear.loop(loop);
    this.#loops = [...this.#loops.filter((each) => each.startSeconds !== loop.startSeconds), loop];
  }

  #breakOff(seconds: number): void {
    this.ear.breakOff(seconds);
    this.#loops = this.#loops.filter((loop) => loop.endSeconds <= seconds + SAME_SECONDS);
  }

  #end(): void {
    this.#breakOff(this.#player.context().currentTime);
    this.ear.finish();
    this.#current = null;
  }

  #hear(report: EarReport): void {
    if (report.kind === 'bar') this.#told(report, report.bar);
    if (report.kind === 'loop') this.#told(report, null);
    if (report.kind === 'loop')
      this.#whenJudging((judging) => judging && this.#judge(report, judging.judgeLoop));
    if (report.kind === 'take') this.#whenJudging(() => this.#take(report));
    if (report.kind === 'sound') this.#tell(report);
    if (report.kind === 'strokes' && this.#current) {
      this.#tell({ kind: 'strokes', strokes: report.strokes, task: this.#current.task });
    }
  }

  #told({ id, number, loop, heard }: Extract<EarReport, { kind: 'bar' | 'loop' }>, bar: number | null): void {
    const stretch = this.#stretches.get(id);
    if (!stretch) return;
    const { originSeconds } = stretch;
    this.#tell({ kind: 'told', told: { number, loop, bar, heard, originSeconds }, stretch });
  }

  /** Does something with what judges as soon as it is there, in order; null: it cannot be loaded. */
  #whenJudging(work: (judging: Judging | null) => void): void {
    if (this.#judging) {
      work(this.#judging);
      return;
    }
    this.#waiting.push(work);
    if (this.#waiting.length > 1) return;
    const go = (judging: Judging | null) => {
      this.#judging = judging;
      for (const each of this.#waiting.splice(0)) each(judging);
    };
    import('./judge-loop.ts').then(go, () => go(null));
  }

  #judge(
    { id, number, loop, heard }: Extract<EarReport, { kind: 'loop' }>,
    judgeLoop: Judging['judgeLoop'],
  ): void {
    const stretch = this.#stretches.get(id);
    if (!stretch) return;
    const { task, level } = this.#practised();
    const { exercise, form, lesson, mine } = stretch.task;
    const played = { lesson, exercise, form, layers: task.layers, mine, bpm: loop.bpm };
    const before = stretch.heard.filter(({ bpm }) => bpm === loop.bpm).slice(-LOOPS_IN_MIND);
    const reports = before.map(({ report }) => report);
    const judgement = judgeLoop({ played, heard, before: reports }, level);
    if (heard.report) stretch.heard.push({ bpm: loop.bpm, report: heard.report });
    const judged: JudgedLoop = {
      stretch: id,
      number,
      loop,
      task: played,
      judgement,
      spreadsMs: spreadsOf(heard.report),
    };
    stretch.loops.push(judged);
    this.#tell({ kind: 'judged', judged });
    const more = this.#lateness.next(judgement.wholeMs);
    if (more !== null) this.ear.guessLatency(this.ear.state().latencyMs + more);
  }

  #take(take: Extract<EarReport, { kind: 'take' }>): void {
    const stretch = this.#stretches.get(take.id);
    this.#stretches.delete(take.id);
    if (!stretch) return;
    const { latencyMs, input } = this.ear.state();
    this.#tell({
      kind: 'stretch ended',
      ended: {
        stretch,
        take,
        kind: input === 'kit' ? 'midi' : 'audio',
        latencySeconds: latencyMs / 1000,
      },
    });
  }
}
