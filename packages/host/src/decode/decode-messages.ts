/** What a program and the thread that decodes for it say to each other. */
import type { ForFfmpeg } from './decoded-sound.ts';
import type { SoundFaultFact } from './sound-fault.ts';

/** Opens a recording, gives its next samples, or lets it go. */
export type DecodeOrder =
  | { readonly want: 'open'; readonly path: string; readonly head: Uint8Array }
  | { readonly want: 'more' }
  | { readonly want: 'end' };

/** An answer to an order; `block` is null at the end of the recording. */
export type DecodeAnswer =
  | { readonly kind: 'opened'; readonly sampleRateHz: number }
  | ({ readonly kind: 'for-ffmpeg' } & ForFfmpeg)
  | { readonly kind: 'samples'; readonly block: Float32Array | null }
  | { readonly kind: 'ended' }
  | { readonly kind: 'fault'; readonly fact: SoundFaultFact }
  | { readonly kind: 'broken'; readonly message: string };
