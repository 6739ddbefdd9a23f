/** What the page and the sound thread say to each other. Samples count from the start of the audio context. */
import { Hertz } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import type { Kit, SoundName } from '@shedbook/sound';
import type { Anchor, GoOnAt, LiveSettings, TakeOver, TimedStroke } from './sequencer.ts';

/** One sound of the kit, made elsewhere. */
export interface KitSound {
  readonly name: SoundName;
  readonly sound: ReturnType<Kit['sound']>;
}

/**
 * Said after the last sound of a part of the kit, and answered in the same word: who made them must not end before they
 * have come, since a browser may lose what an ended worker sent (seen in Firefox where nobody had taken it yet).
 */
export const ALL_SOUNDS = 'all sounds';

/** From who makes the kit to the sound thread. */
export type KitMessage = KitSound | typeof ALL_SOUNDS;

/** From the page. */
export type Order =
  | { readonly kind: 'kit port'; readonly port: MessagePort }
  | {
      readonly kind: 'start';
      readonly program: Program;
      readonly settings: LiveSettings;
      readonly setUp: 'right-handed' | 'left-handed';
      /** Where it goes on; the first bar where left out. */
      readonly from?: GoOnAt;
      /** Whether it sounds in a room, which is a third of the work: yes where left out. */
      readonly room?: boolean;
    }
  | {
      /** Sounds that are played until those of the kit itself have come. */
      readonly kind: 'stand-ins';
      readonly sounds: readonly KitSound[];
    }
  | {
      /** What will be played: its beginning is gone through in silence, so that no code runs for the first time later. */
      readonly kind: 'rehearse';
      readonly program: Program;
      /** At once, where no block is asked for; otherwise with each block, which then takes no longer than it may. */
      readonly atOnce: boolean;
    }
  | { readonly kind: 'settings'; readonly settings: LiveSettings; readonly when: 'now' | 'next time' }
  | { readonly kind: 'program'; readonly program: Program; readonly when: TakeOver }
  | { readonly kind: 'stop' };

/** From the sound thread. */
export type Report =
  | { readonly kind: 'anchor'; readonly anchor: Anchor; readonly program: Program }
  | { readonly kind: 'strokes'; readonly strokes: readonly TimedStroke[] }
  /** An order to play came, and waits for sounds of the kit. */
  | { readonly kind: 'waiting' };

/** Samples a second; the same everywhere, so that the kit can be made before anything is played. */
export const KIT_RATE_HZ = Hertz(44_100);

/** Name that the sound thread's player is registered under. */
export const PLAYER = 'shedbook-player';

/** Which set of drums, the same for everybody. */
export const KIT_SEED = 'tannery';

/** The kit in two parts that take about as long to make: cymbals, which ring on, and everything else. */
export const KIT_PARTS = ['cymbals', 'rest'] as const;

/** Asks for every sound of a part of the kit. */
export interface KitRequest {
  readonly sampleRateHz: Hertz;
  readonly part: (typeof KIT_PARTS)[number];
  /** What is needed soonest. */
  readonly first: readonly SoundName[];
  readonly port: MessagePort;
}
