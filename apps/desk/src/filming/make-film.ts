/** Makes a film in the browser: the same pages, frames, sound and captions as on disk, through the browser's encoders. */
import type { Hertz, Lesson } from '@shedbook/core';
import {
  captionsOf,
  chapterList,
  chaptersOf,
  createPainter,
  drawingsOf,
  type Film,
  filmIn,
  frameAt,
  lookFor,
  planFilm,
  type Rasteriser,
  renderScene,
  requestFor,
  writeVtt,
} from '@shedbook/film';
import type { FilmWish } from '@shedbook/routes';
import { type Kit, type SpokenWords, type StereoAudio, spokenAt } from '@shedbook/sound';
import { LANGUAGE_TAGS } from '@shedbook/words';
import {
  ALL_FORMATS,
  BufferSource,
  BufferTarget,
  EncodedAudioPacketSource,
  EncodedPacketSink,
  Input,
  Output,
  VideoSample,
  VideoSampleSource,
} from 'mediabunny';
import { encodeFilmSound } from './encode-sound.ts';
import { chaptered, containerOf, type FilmKind, headOf } from './film-kind.ts';
import type { FilmTools } from './film-tools.ts';
import { keepSound } from './kept-sound.ts';
import type { FilmContent } from './messages.ts';

/** What is told while a film is made: the part of a stage that is done, 0 to 1. */
export type TellStage = (stage: 'sound' | 'picture', part: number) => void;

/** What a film is made of. */
export interface FilmOfWish {
  readonly lesson: Lesson;
  readonly wish: FilmWish;
  readonly kind: FilmKind;
  readonly tools: FilmTools;
  readonly kit: Kit;
  /** The words of a spoken count as they were recorded; null where nothing is said. */
  readonly spoken: Float32Array | null;
  readonly tell: TellStage;
}

/** How much of the sound's work its rendering is. */
const RENDERED_SHARE = 0.6;

/** The sound of every scene, one after the other. */
function* soundOf(
  film: Film,
  { kit, words, tell }: Pick<FilmOfWish, 'kit' | 'tell'> & { readonly words: SpokenWords | null },
): Generator<StereoAudio> {
  for (const [index, scene] of film.scenes.entries()) {
    yield* renderScene(scene, film, { kit, recording: null, words });
    tell('sound', (RENDERED_SHARE * (index + 1)) / film.scenes.length);
  }
}

/** Source of the numbers: ITU-R BT.709-6, limited range. */
const COLOURS = { primaries: 'bt709', transfer: 'bt709', matrix: 'bt709', fullRange: false } as const;

/** Seconds from one whole picture to the next. */
const KEY_SECONDS = 4;

/** Every frame, encoded. */
async function addFrames(source: VideoSampleSource, film: Film, rasteriser: Rasteriser, tell: TellStage) {
  const painter = createPainter(film, rasteriser.rasterise);
  const rate = film.request.framesPerSecond;
  const size = { codedWidth: film.widthPx, codedHeight: film.heightPx };
  for (let frame = 0; frame < film.frames; frame += 1) {
    const time = { timestamp: frame / rate, duration: 1 / rate };
    const sample = new VideoSample(painter.paint(frame), {
      ...{ format: 'I420', ...size, ...time, colorSpace: COLOURS },
    });
    await source.add(sample);
    sample.close();
    if (frame % rate === 0) tell('picture', frame / film.frames);
  }
  tell('picture', 1);
}

/** Every packet of sound that was encoded before. */
async function addSound(source: EncodedAudioPacketSource, sound: ArrayBuffer): Promise<void> {
  const input = new Input({ formats: ALL_FORMATS, source: new BufferSource(sound) });
  const track = await input.getPrimaryAudioTrack();
  const decoderConfig = await track?.getDecoderConfig();
  if (!track || !decoderConfig) throw new Error('Internal error: sound was encoded into nothing');
  for await (const packet of new EncodedPacketSink(track).packets())
    await source.add(packet, { decoderConfig });
}

/** Sound and frames in one file. */
async function joined(film: Film, sound: ArrayBuffer, { kind, tools, tell }: FilmOfWish): Promise<Blob> {
  const target = new BufferTarget();
  const output = new Output({ format: containerOf(kind), target });
  const frames = new VideoSampleSource({ ...kind.video, keyFrameInterval: KEY_SECONDS });
  const heard = new EncodedAudioPacketSource(kind.sound.codec);
  output.addVideoTrack(frames, { frameRate: film.request.framesPerSecond });
  output.addAudioTrack(heard);
  const headed = { title: film.request.lesson.title, chapters: chaptersOf(film) };
  output.setMetadataTags(headOf(kind, headed));
  await output.start();
  await Promise.all([
    addSound(heard, sound).then(() => heard.close()),
    addFrames(frames, film, tools.rasteriser, tell),
  ]);
  await output.finalize();
  return new Blob([chaptered(kind, target.buffer as ArrayBuffer, headed)], { type: kind.type });
}

/** What belongs beside the film. */
function beside(film: Film, { toPng }: Rasteriser): readonly FilmContent[] {
  const captions = LANGUAGE_TAGS.map((tag): FilmContent => {
    const content = new Blob([writeVtt(captionsOf(filmIn(film, tag)))], { type: 'text/vtt' });
    return { part: `captions-${tag}`, ending: `.${tag}.vtt`, content };
  });
  const chapters = new Blob([chapterList(chaptersOf(film))], { type: 'text/plain' });
  const cover = new Blob([toPng(drawingsOf(film, frameAt(film, 0)).page.svg())], { type: 'image/png' });
  return [
    ...captions,
    { part: 'chapters', ending: '.chapters.txt', content: chapters },
    { part: 'cover', ending: '.png', content: cover },
  ];
}

function wordsAt(rateHz: Hertz, { wish, spoken }: FilmOfWish): SpokenWords | null {
  return spoken && spokenAt(wish.language, [spoken], rateHz);
}

/** The film and what lies beside it. */
export async function makeFilm(order: FilmOfWish): Promise<readonly FilmContent[]> {
  const { lesson, wish, kind, tools, kit, tell } = order;
  const film = planFilm(requestFor(lesson, wish, []), lookFor(wish), tools, wish.language);
  const words = wordsAt(kit.sampleRateHz, order);
  const kept = keepSound(soundOf(film, { kit, tell, words }), kit.sampleRateHz);
  const sound = await encodeFilmSound(kept, kind, (part) =>
    tell('sound', RENDERED_SHARE + (1 - RENDERED_SHARE) * part),
  );
  const content = await joined(film, sound, order);
  return [{ part: 'film', ending: kind.ending, content }, ...beside(film, tools.rasteriser)];
}
