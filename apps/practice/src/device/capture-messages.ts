/** What the capture thread says. */

/** Name that the capture processor is registered under. */
export const CAPTURE = 'shedbook-capture';

/** Mono samples and the frame of the audio context at which they were taken. */
export interface CapturedBlock {
  readonly frame: number;
  readonly samples: Float32Array<ArrayBuffer>;
  /** What the page itself gave to its loudspeaker in the same frames; left out where that is not known. */
  readonly played?: Float32Array<ArrayBuffer>;
}

/** To the capture thread: send blocks here as well; count on another clock; send no longer. */
export type CaptureOrder =
  | { readonly kind: 'send to'; readonly port: MessagePort }
  | {
      readonly kind: 'clock';
      /** Number of frames to add to come to the clock of the context that plays; 0 where that is the same one. */
      readonly frameOffset: number;
    }
  | { readonly kind: 'stop' };
