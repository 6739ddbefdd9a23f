/**
 * Notation: a bar spelled as notes and rests in layers, hands (stems up) and feet (stems down).
 *
 * Conventions: every layer of every bar adds up to the bar exactly; starts and durations are in whole notes;
 * a beat's rhythm never reaches into the next beat. A tuplet covers exactly one beat.
 */

import type { Articulation, Voice } from '../kit/voice.ts';
import type { Mark } from '../rhythm/cell.ts';
import type { Fraction } from '../rhythm/fraction.ts';
import type { Meter } from '../rhythm/meter.ts';

/** A written value: 1 whole, 2 half, 4 quarter, 8 eighth, … with dots. */
export interface NoteValue {
  readonly base: 1 | 2 | 4 | 8 | 16 | 32 | 64;
  readonly dots: 0 | 1;
}

/** One notehead of a chord. */
export interface NotatedHead {
  readonly voice: Voice;
  readonly articulation: Articulation;
  readonly mark: Mark;
  readonly accent: boolean;
  readonly ghost: boolean;
  readonly sticking: 'R' | 'L' | 'B' | null;
  /** Tied to what sounds before it: not struck, it goes on. Its mark is `~`. */
  readonly isHeld?: true;
  /** Tied to what stands after it, which goes on from it. */
  readonly goesOn?: true;
}

/** A note (one stem, one or more heads) or a rest. */
export interface NotatedEvent {
  /** A note with its heads, or a rest with none. */
  readonly kind: 'note' | 'rest';
  readonly heads: readonly NotatedHead[];
  readonly value: NoteValue;
  /** From the bar line, in whole notes. */
  readonly start: Fraction;
  /** Sounding length, in whole notes, with any tuplet counted in. */
  readonly duration: Fraction;
  /** Slot (from 0) that it starts on, of the `slots` equal parts that this layer's beat is spelled in. */
  readonly slot: number;
  readonly slots: number;
  /** Whether it is part of its group's beam. */
  readonly beamed: boolean;
}

/** Events under one tuplet or one beam: one beat, or a rest that covers more. */
export interface NotatedGroup {
  /** First beat covered, from 0. */
  readonly beat: number;
  /** Beats covered: 1, or more for a rest. */
  readonly beats: number;
  /** `actual` in the time of `normal`, both numbers of notes, or null. `bracket` is wanted where no beam spans the group. */
  readonly tuplet: { readonly actual: number; readonly normal: number; readonly bracket: boolean } | null;
  readonly events: readonly NotatedEvent[];
}

/** What stands under one row of stems in a bar. */
export interface NotatedLayer {
  /** Number of the layer, a whole number: 1 stems up, 2 stems down, from 3 what fits the beats of neither. */
  readonly layer: number;
  readonly stems: 'up' | 'down';
  readonly groups: readonly NotatedGroup[];
}

/** One bar of notation. */
export interface NotatedBar {
  readonly meter: Meter;
  /** By their numbers; a layer in which nothing is struck is left out unless it is the only one. */
  readonly layers: readonly NotatedLayer[];
}
