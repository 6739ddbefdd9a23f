/** Kinds of film that browsers encode by themselves. Sources: W3C WebCodecs; its codec registry. */
import type { FilmEnding } from '@shedbook/film';
import {
  canEncodeAudio,
  canEncodeVideo,
  type MetadataTags,
  Mp4OutputFormat,
  type OutputFormat,
  Quality,
  WebMOutputFormat,
} from 'mediabunny';
import { chplBytes } from './mp4-chapters.ts';
import { type Headed, placeFor, putChapters } from './webm-chapters.ts';

/** A kind of film. */
export interface FilmKind {
  readonly ending: FilmEnding;
  readonly type: string;
  readonly video: { readonly codec: 'avc' | 'vp9' | 'vp8'; readonly quality: Quality };
  readonly sound: { readonly codec: 'aac' | 'opus'; readonly quality: Quality };
}

/** Bits of a second of picture where an encoder does not keep to a quality. */
const PICTURE_BITS = 2_500_000;

const picture = (codec: FilmKind['video']['codec'], quantizer: number) => ({
  codec,
  quality: new Quality({ quantizer, bitrate: PICTURE_BITS, bitrateMode: 'variable' }),
});

/** The first that a browser can make is taken: what every telephone and video program plays comes first. */
const KINDS: readonly FilmKind[] = [
  {
    ...{ ending: '.mp4', type: 'video/mp4' },
    video: picture('avc', 23),
    sound: { codec: 'aac', quality: new Quality({ bitrate: 192_000 }) },
  },
  ...(['vp9', 'vp8'] as const).map(
    (codec): FilmKind => ({
      ...{ ending: '.webm', type: 'video/webm' },
      video: picture(codec, 28),
      sound: { codec: 'opus', quality: new Quality({ bitrate: 128_000 }) },
    }),
  ),
];

/** The kind of film that this browser makes in a size, in pixels; null where it makes none. */
export async function filmKindHere(size: {
  readonly width: number;
  readonly height: number;
  readonly frameRate: number;
}): Promise<FilmKind | null> {
  for (const kind of KINDS) {
    const { video, sound } = kind;
    const isAble =
      (await canEncodeVideo(video.codec, { ...size, quality: video.quality })) &&
      (await canEncodeAudio(sound.codec, { numberOfChannels: 2, quality: sound.quality }));
    if (isAble) return kind;
  }
  return null;
}

/** The container of a kind. */
export function containerOf({ ending }: Pick<FilmKind, 'ending'>): OutputFormat {
  return ending === '.mp4'
    ? new Mp4OutputFormat({ fastStart: 'in-memory', metadataFormat: 'udta' })
    : new WebMOutputFormat();
}

/** What a file of a kind says of itself before it is written; see {@link chaptered}. */
export function headOf({ ending }: Pick<FilmKind, 'ending'>, headed: Headed): MetadataTags {
  const { title, chapters } = headed;
  return ending === '.mp4'
    ? { title, raw: { chpl: chplBytes(chapters) } }
    : { title, raw: { CHAPTERS: placeFor(headed) } };
}

/** A written file of a kind with its chapters, which only MP4 has already. */
export function chaptered(
  { ending }: Pick<FilmKind, 'ending'>,
  file: ArrayBuffer,
  headed: Headed,
): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(file);
  if (ending === '.webm') putChapters(bytes, headed);
  return bytes;
}
