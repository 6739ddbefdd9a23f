/** What a program and the thread that reads files from elsewhere for it say to each other. */
import type { LogReading } from '@shedbook/coach';
import type { Hertz } from '@shedbook/core';
import type { KitKeys, MidiTake } from '@shedbook/exchange';
import type { SoundFontFact, SoundFontSounds } from '@shedbook/sound';

/** What each kind of file comes to. */
export interface Outside {
  readonly midi: { readonly asked: { readonly keys: KitKeys }; readonly found: MidiTake };
  readonly log: { readonly asked: object; readonly found: LogReading };
  readonly soundFont: {
    readonly asked: { readonly sampleRateHz: Hertz };
    readonly found: { readonly sounds: SoundFontSounds } | { readonly fault: SoundFontFact };
  };
}

/** A kind of file from elsewhere that is read whole. */
export type OutsideKind = keyof Outside;

/** A file that is to be read, and how many bytes it may have. */
export type OutsideOrder = {
  readonly [Kind in OutsideKind]: {
    readonly kind: Kind;
    readonly path: string;
    readonly mostBytes: number;
    readonly asked: Outside[Kind]['asked'];
  };
}[OutsideKind];

/** What became of it. */
export type OutsideAnswer =
  | { readonly kind: 'read'; readonly found: Outside[OutsideKind]['found'] }
  | { readonly kind: 'too-large' }
  /** By the system's own name for why. */
  | { readonly kind: 'unreadable'; readonly code: string }
  | { readonly kind: 'broken'; readonly message: string };
