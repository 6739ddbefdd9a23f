/** Keeps the take in hand while it is played, and finds it again after the page was closed. */
import type { KitNote } from '../device/midi-clock.ts';
import { hearAgain } from '../ear/hear-again.ts';
import type { Hearing, HearingEvent, Stretch, StretchEnded } from '../ear/hearing.ts';
import { wavOf } from '../ear/pcm.ts';
import { dropHand, type Hand, keepHand, type Piece, readHand } from './hand-store.ts';
import { isKept } from './take-store.ts';

/** What this file knows of the stretch that is played. */
interface Growing {
  readonly stretch: Stretch;
  readonly asked: Hand['asked'];
  readonly notes: KitNote[];
  /** Pieces of the recording that are not kept yet. */
  readonly fresh: Piece[];
  pieces: number;
}

/** Keeps what one lesson's hearing hands on, piece by piece; nothing before a round was played to its end. */
export class HandKeeper {
  readonly #lesson: string;
  readonly #latencySeconds: () => number;
  readonly #growing = new Map<string, Growing>();
  /** One after another, so that no row is older than the one that it replaces. */
  #kept: Promise<void> = Promise.resolve();

  /** @param lesson lasting name of the lesson */
  constructor(lesson: string, latencySeconds: () => number) {
    this.#lesson = lesson;
    this.#latencySeconds = latencySeconds;
  }

  /** Takes what happens while one is heard. */
  take(event: HearingEvent): void {
    if (event.kind === 'stretch begins') this.#begin(event);
    else if (event.kind === 'sound') this.#sound(event.id, event.samples);
    else if (event.kind === 'judged') this.#write(event.judged.stretch, null);
    else if (event.kind === 'stretch ended') this.#end(event.ended);
    else if (event.kind === 'strokes') this.#strokes(event);
  }

  #begin({ stretch, asked }: Extract<HearingEvent, { kind: 'stretch begins' }>): void {
    if (asked) this.#growing.set(stretch.id, { stretch, asked, notes: [], fresh: [], pieces: 0 });
  }

  #sound(id: string, samples: Piece): void {
    this.#growing.get(id)?.fresh.push(samples);
    this.#write(id, null);
  }

  #strokes({ strokes }: Extract<HearingEvent, { kind: 'strokes' }>): void {
    const now = [...this.#growing.values()].at(-1);
    if (!now || now.asked.sampleRateHz !== null) return;
    for (const { contextSeconds, voice, levelDb } of strokes) {
      now.notes.push({ seconds: contextSeconds, voice, levelDb });
    }
  }

  #end({ stretch: { id }, take: { audio: _, ...heard } }: StretchEnded): void {
    this.#write(id, heard);
    this.#growing.delete(id);
  }

  #write(id: string, heard: Hand['heard']): void {
    const growing = this.#growing.get(id);
    if (!growing || growing.stretch.loops.length === 0) return;
    const { stretch, asked, notes } = growing;
    const fresh = growing.fresh.splice(0);
    growing.pieces += fresh.length;
    const hand: Hand = {
      ...{ stretch, asked, notes: [...notes], pieces: growing.pieces, heard },
      kind: asked.sampleRateHz === null ? 'midi' : 'audio',
      latencySeconds: this.#latencySeconds(),
    };
    this.#kept = this.#kept.then(() => keepHand(this.#lesson, hand, fresh)).catch(() => undefined);
  }
}

/** The take in hand of a lesson as it ended, or as far as it had come; null where there is none. */
export async function handOf(lesson: string, hearing: Hearing): Promise<StretchEnded | null> {
  const kept = await readHand(lesson);
  if (!kept || hearing.isOpen(kept.hand.stretch.id)) return null;
  const { hand, sound } = kept;
  if (await isKept(hand.stretch.id)) {
    await dropHand(lesson);
    return null;
  }
  const { stretch, asked, kind, latencySeconds, notes } = hand;
  if (hand.heard) {
    const audio = asked.sampleRateHz === null ? null : wavOf(sound, asked.sampleRateHz);
    return { stretch, kind, latencySeconds, take: { ...hand.heard, audio } };
  }
  const loops = stretch.loops.map(({ loop }) => loop);
  const take = await hearAgain({ asked, latencySeconds, loops, sound, notes });
  return take && { stretch, kind, latencySeconds, take };
}
