/**
 * What is wrong with a recording, as facts: they go from the thread that decodes to whoever says them.
 */

/** A kind of file that may have no sound in it. */
export type SoundKind = 'wav' | 'flac' | 'vorbis' | 'mp3';

/** What was found in a file instead of a recording. */
export type FoundSound =
  | {
      readonly is:
        | 'empty'
        | 'text'
        | 'unknown'
        | 'oddWav'
        | 'lastPage'
        | 'packet'
        | 'noReadableTrack'
        | 'noTrack';
    }
  | { readonly is: 'without'; readonly kind: SoundKind }
  | { readonly is: 'rate'; readonly sampleRateHz: number }
  | { readonly is: 'tooLong'; readonly minutes: number }
  | { readonly is: 'seconds'; readonly heardSeconds: number; readonly wholeSeconds: number }
  | { readonly is: 'codec'; readonly codec: string };

/** What is wrong with a recording. */
export type SoundFaultFact =
  /** No decoder here reads it. */
  | { readonly fault: 'cannot-read' | 'breaks-off'; readonly found: FoundSound }
  /** FFmpeg would be needed. */
  | { readonly fault: 'no-ffmpeg'; readonly found: FoundSound }
  /** What FFmpeg said of it. */
  | { readonly fault: 'complaint'; readonly found: FoundSound; readonly why: string }
  /** It took too much time or memory. */
  | { readonly fault: 'too-much' };

/** A recording cannot be read. */
export class SoundFault extends Error {
  override readonly name = 'SoundFault';
  readonly fact: SoundFaultFact;

  /** @param fact what is wrong with it */
  constructor(fact: SoundFaultFact) {
    super(fact.fault);
    this.fact = fact;
  }
}

/** The fault of a file in a format that no decoder here reads. */
export function cannotRead(found: FoundSound): SoundFault {
  return new SoundFault({ fault: 'cannot-read', found });
}

/** The fault of a file that breaks off; `found` says what is there of it. */
export function breaksOff(found: FoundSound): SoundFault {
  return new SoundFault({ fault: 'breaks-off', found });
}

/** The fault of a file that ends before it should. */
export function endsEarly(heardSeconds: number, wholeSeconds: number): SoundFault {
  return breaksOff({ is: 'seconds', heardSeconds, wholeSeconds });
}
