/**
 * The FFmpeg of this machine: what it can encode, and how it is called. It is a program of the user's own; nothing of
 * it comes with Shedbook.
 */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { FullScaleDb } from '@shedbook/core';
import { FILM_ENDINGS, type Film, type FilmEnding } from '@shedbook/film';
import { InputError } from '../input-error.ts';

const run = promisify(execFile);

/** An encoder of FFmpeg and how it is told to work. */
interface VideoEncoder {
  readonly name: string;
  readonly options: readonly string[];
}

interface Container {
  /** The first that is there is taken. */
  readonly video: readonly VideoEncoder[];
  readonly sound: readonly string[];
  readonly rest: readonly string[];
}

const CONTAINERS: Readonly<Record<FilmEnding, Container>> = {
  '.mp4': {
    video: [
      { name: 'libx264', options: ['-preset', 'ultrafast', '-crf', '19'] },
      { name: 'h264_videotoolbox', options: ['-q:v', '65'] },
      { name: 'h264_nvenc', options: ['-cq', '22'] },
      { name: 'h264_mf', options: ['-quality', '75'] },
      { name: 'libopenh264', options: ['-b:v', '4M'] },
    ],
    // Its other way of choosing quantisers lets peaks of drums grow by 3 dB, measured with FFmpeg 5.1.
    sound: ['-c:a', 'aac', '-aac_coder', 'fast', '-b:a', '192k', '-f', 'mp4'],
    rest: ['-c:s', 'mov_text', '-movflags', '+faststart', '-f', 'mp4'],
  },
  '.webm': {
    video: [
      {
        name: 'libvpx-vp9',
        options: ['-deadline', 'realtime', '-cpu-used', '8', '-row-mt', '1', '-crf', '34', '-b:v', '0'],
      },
    ],
    sound: ['-c:a', 'libopus', '-b:a', '128k', '-f', 'webm'],
    rest: ['-c:s', 'webvtt', '-f', 'webm'],
  },
};

/** Finds the encoder of this machine for a kind of file. @throws InputError where there is no FFmpeg, or none in it */
export async function findEncoder(ending: FilmEnding): Promise<VideoEncoder> {
  const said = await run('ffmpeg', ['-hide_banner', '-encoders'], { maxBuffer: 1 << 24 }).catch(() => {
    throw new InputError(({ words }) => words.film.noFfmpeg);
  });
  const has = (name: string) => new RegExp(`\\s${name}\\s`).test(said.stdout);
  const found = CONTAINERS[ending].video.find(({ name }) => has(name));
  if (found) return found;
  const other = FILM_ENDINGS.find((each) => CONTAINERS[each].video.some(({ name }) => has(name)));
  throw new InputError(({ words }) =>
    other ? words.film.otherEnding({ ending, other }) : words.film.noEncoder,
  );
}

/** Whether this machine has an FFmpeg that encodes a kind of file. */
async function canEncode(ending: FilmEnding): Promise<boolean> {
  return findEncoder(ending).then(
    () => true,
    () => false,
  );
}

/** The kind of file that films are made as on this machine: MP4, else WebM, by what its FFmpeg encodes; null without one. */
export async function endingHere(): Promise<FilmEnding | null> {
  for (const ending of FILM_ENDINGS) if (await canEncode(ending)) return ending;
  return null;
}

/** Files that go into a film. */
export interface FilmParts {
  /** Encoded already. */
  readonly sound: string;
  /** Title and chapters in FFmpeg's own format. */
  readonly chapters: string;
  /** WebVTT files with their languages after ISO 639-2. */
  readonly captions: readonly { readonly path: string; readonly language: string }[];
}

/** Says which colours the numbers of the picture mean. @source ITU-R BT.709-6 */
const COLOURS = [
  '-color_range',
  'tv',
  '-colorspace',
  'bt709',
  '-color_primaries',
  'bt709',
  '-color_trc',
  'bt709',
];

/** A stretch of a recording whose picture is laid over the frames. */
export interface PictureOver {
  readonly path: string;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** Ratio: 0.5 is half as fast as it was recorded. */
  readonly speed: number;
  /** When its scene begins and ends in the film; the first picture stands still until it moves. */
  readonly sceneSeconds: { readonly from: number; readonly to: number };
  readonly leadSeconds: number;
  /** In pixels, all even. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** Lays pictures over the frames, each in its scene and at its speed. */
function overlaid(pictures: readonly PictureOver[], first: number, rate: number): string {
  const chains = pictures.flatMap(({ speed, sceneSeconds, leadSeconds, box }, index) => {
    const { from, to } = sceneSeconds;
    const [under, over] = [index === 0 ? '0:v' : `v${index}`, `p${index}`];
    const last = index === pictures.length - 1 ? 'out' : `v${index + 1}`;
    const moved = `setpts=PTS/${speed}+${leadSeconds.toFixed(6)}/TB,fps=${rate}:start_time=0`;
    const sized = `scale=${box.width}:${box.height}:out_color_matrix=bt709:out_range=tv,setsar=1,format=yuv420p`;
    return [
      `[${first + index}:V:0]${moved},${sized},setpts=PTS+${from.toFixed(6)}/TB[${over}]`,
      `[${under}][${over}]overlay=${box.x}:${box.y}:format=yuv420:enable='between(t,${(from - 1e-4).toFixed(6)},${(to - 1e-3).toFixed(6)})'[${last}]`,
    ];
  });
  return chains.join(';');
}

/** What FFmpeg makes of frames that come on its standard input. */
interface Encoding {
  readonly encoder: VideoEncoder;
  readonly ending: FilmEnding;
  readonly pictures: readonly PictureOver[];
  readonly out: string;
}

/** The arguments of FFmpeg for a film whose frames come on its standard input. */
export function encoderArguments(
  { widthPx, heightPx, request }: Pick<Film, 'widthPx' | 'heightPx' | 'request'>,
  { sound, chapters, captions }: FilmParts,
  { encoder, ending, pictures, out }: Encoding,
): readonly string[] {
  const rate = request.framesPerSecond;
  const frames = ['-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-s', `${widthPx}x${heightPx}`, '-r', `${rate}`];
  const stretches = pictures.flatMap(({ path, fromSeconds, toSeconds }) => {
    const length = (toSeconds - fromSeconds).toFixed(6);
    return ['-ss', fromSeconds.toFixed(6), '-t', length, '-i', path];
  });
  const over = ['-filter_complex', overlaid(pictures, 3 + captions.length, rate), '-map', '[out]'];
  return [
    ...['-y', '-v', 'error', '-nostdin', ...frames, ...COLOURS, '-i', 'pipe:0'],
    ...['-i', sound, '-f', 'ffmetadata', '-i', chapters],
    ...[...captions.flatMap(({ path }) => ['-i', path]), ...stretches],
    ...(pictures.length > 0 ? over : ['-map', '0:v']),
    ...['-map', '1:a', ...captions.flatMap((_, index) => ['-map', `${3 + index}:s`])],
    ...['-map_metadata', '2', '-map_chapters', '2'],
    ...captions.flatMap(({ language }, index) => [`-metadata:s:s:${index}`, `language=${language}`]),
    ...['-c:v', encoder.name, ...encoder.options, '-pix_fmt', 'yuv420p', '-g', `${4 * rate}`, ...COLOURS],
    ...['-c:a', 'copy', ...CONTAINERS[ending].rest, out],
  ];
}

/**
 * Encodes sound: two channels of 32-bit floats, interleaved.
 * @returns the true peak of what a player will decode, in dBTP, by FFmpeg's meter (EBU R 128)
 */
export async function encodeSound(
  { path, sampleRateHz }: { readonly path: string; readonly sampleRateHz: number },
  ending: FilmEnding,
  out: string,
  signal: AbortSignal,
): Promise<FullScaleDb> {
  const raw = ['-f', 'f32le', '-ar', `${sampleRateHz}`, '-ac', '2', '-i', path];
  await run('ffmpeg', ['-y', '-v', 'error', '-nostdin', ...raw, ...CONTAINERS[ending].sound, out], {
    signal,
  });
  const meter = [
    '-hide_banner',
    '-nostdin',
    '-i',
    out,
    '-af',
    'ebur128=peak=true:framelog=verbose',
    '-f',
    'null',
    '-',
  ];
  const { stderr } = await run('ffmpeg', meter, { signal, maxBuffer: 1 << 26 });
  const peak = [...stderr.matchAll(/Peak:\s+(-?[\d.]+|-inf) dBFS/g)].at(-1)?.[1];
  return FullScaleDb(peak === undefined || peak === '-inf' ? Number.NEGATIVE_INFINITY : Number(peak));
}

/** A text made safe for FFmpeg's file of chapters. @source FFmpeg's documentation, "Metadata", section 1 */
function escaped(text: string): string {
  return text.replaceAll(/[=;#\\\n]/g, (character) => `\\${character}`);
}

/** Title and chapters in FFmpeg's own format. */
export function chapterFile(
  title: string,
  chapters: readonly { readonly fromSeconds: number; readonly toSeconds: number; readonly title: string }[],
): string {
  const ms = (seconds: number) => Math.round(seconds * 1000);
  const blocks = chapters.map(
    (each) =>
      `[CHAPTER]\nTIMEBASE=1/1000\nSTART=${ms(each.fromSeconds)}\nEND=${ms(each.toSeconds)}\ntitle=${escaped(each.title)}\n`,
  );
  return `;FFMETADATA1\ntitle=${escaped(title)}\n${blocks.join('')}`;
}
