/**
 * The kinds of files that every browser we ask for shows or plays and that can be printed, by the endings of their names.
 * Source: IANA media types; HTML living standard 4.8 (images, audio and video), of which only what the oldest browsers
 * play.
 */

/** A file of the teacher's own. */
export interface Medium {
  /** From the folder of the lesson. */
  readonly path: string;
  /** What it shows, in the teacher's words, or null. */
  readonly says: string | null;
}

/** What a file is to those who see or hear it. */
export type MediumKind = 'picture' | 'sound' | 'video';

/** Kind and media type of a file. */
export interface MediumType {
  readonly kind: MediumKind;
  readonly type: string;
}

/** Kinds and media types by endings, small letters without a dot. */
export const MEDIUM_TYPES = {
  png: { kind: 'picture', type: 'image/png' },
  jpg: { kind: 'picture', type: 'image/jpeg' },
  jpeg: { kind: 'picture', type: 'image/jpeg' },
  gif: { kind: 'picture', type: 'image/gif' },
  svg: { kind: 'picture', type: 'image/svg+xml' },
  mp3: { kind: 'sound', type: 'audio/mpeg' },
  m4a: { kind: 'sound', type: 'audio/mp4' },
  wav: { kind: 'sound', type: 'audio/wav' },
  flac: { kind: 'sound', type: 'audio/flac' },
  mp4: { kind: 'video', type: 'video/mp4' },
  webm: { kind: 'video', type: 'video/webm' },
} as const satisfies Readonly<Record<string, MediumType>>;

/** An ending of a file that can be shown. */
export type MediumEnding = keyof typeof MEDIUM_TYPES;

/** Bytes of a file at most. */
export const MEDIUM_BYTES: Readonly<Record<MediumKind, number>> = {
  picture: 5_000_000,
  sound: 12_000_000,
  video: 30_000_000,
};
