/**
 * The take in hand, kept while it is played and until it is kept for good or the next one begins, so that neither a
 * reload nor a page that the device closed loses it. One for each lesson.
 *
 * Conventions: one row with what is known, and one for each piece of the recording, beside the sounds of the takes.
 */
import type { KitNote } from '../device/midi-clock.ts';
import type { EarAsked } from '../ear/ear-messages.ts';
import type { Stretch, StretchEnded } from '../ear/hearing.ts';
import { drop, keepMany, read } from '../kept/database.ts';

/** A stretch of playing as far as it has come. */
export interface Hand {
  readonly stretch: Stretch;
  /** What the ear was told to listen for. */
  readonly asked: EarAsked;
  readonly kind: StretchEnded['kind'];
  readonly latencySeconds: number;
  /** Strokes of a kit; none where there is sound. */
  readonly notes: readonly KitNote[];
  /** How many pieces of the recording there are. */
  readonly pieces: number;
  /** What came of it, without its sound; null while it was played. */
  readonly heard: Omit<StretchEnded['take'], 'audio'> | null;
}

/** A piece of a recording, in 16 bits. */
export type Piece = Int16Array<ArrayBuffer>;

const idOf = (lesson: string, piece?: number) => ['in hand', lesson, piece].join(' ').trim();

/** Keeps what has come of the take in hand, and new pieces of its recording. */
export async function keepHand(lesson: string, hand: Hand, fresh: readonly Piece[]): Promise<void> {
  const first = hand.pieces - fresh.length;
  const pieces = fresh.map((samples, index) => ({ id: idOf(lesson, first + index), samples }));
  await keepMany('audio', [...pieces, { id: idOf(lesson), hand }]);
}

/** The take in hand with its recording, or null. */
export async function readHand(lesson: string): Promise<{ hand: Hand; sound: readonly Piece[] } | null> {
  const { hand } = (await read<{ hand: Hand }>('audio', idOf(lesson))) ?? {};
  if (!hand) return null;
  const numbers = Array.from({ length: hand.pieces }, (_, piece) => piece);
  const rows = await Promise.all(
    numbers.map((piece) => read<{ samples: Piece }>('audio', idOf(lesson, piece))),
  );
  return { hand, sound: rows.flatMap((row) => (row ? [row.samples] : [])) };
}

/** Lets the take in hand go. */
export async function dropHand(lesson: string): Promise<void> {
  const { hand } = (await read<{ hand: Hand }>('audio', idOf(lesson))) ?? {};
  if (!hand) return;
  await drop(['audio'], idOf(lesson));
  for (let piece = 0; piece < hand.pieces; piece += 1) await drop(['audio'], idOf(lesson, piece));
}
