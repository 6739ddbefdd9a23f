/** What a pack carries of exercises besides the page: how the teacher plays them, and films of them. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import type { Lesson } from '@shedbook/core';
import { estimateFilmBytes, planFilm } from '@shedbook/film';
import { type EngravingTools, InputError, loadKit } from '@shedbook/host';
import {
  estimateDemonstrationBytes,
  estimatePictureBytes,
  type HeardPerformances,
  makeDemonstrations,
  makeFilm,
} from '@shedbook/host/film';
import { type ExerciseFilm, type PackRequest, RECORDING_RATE_HZ } from '@shedbook/pack';
import { durationWords, sizeWords } from '@shedbook/words';
import { unlessInterrupted } from '../interrupt.ts';
import { hearAll } from '../performances.ts';
import type { Speaker } from '../terminal.ts';
import type { BuildRequest } from './request.ts';

/** A pack without any of it. */
const NONE: HeardPerformances = { recorded: [], recordings: new Map(), takes: [] };

/** What it is made with. */
interface Making {
  readonly request: BuildRequest;
  readonly tools: EngravingTools;
}

/** What films are made with. */
interface FilmMaking extends Making {
  readonly heard: HeardPerformances;
  readonly signal: AbortSignal;
}

/** A film of each exercise, over its performance where there is one. */
async function makeFilms(
  lesson: Lesson,
  { request, tools, heard, signal }: FilmMaking,
  terminal: Speaker,
): Promise<readonly ExerciseFilm[]> {
  const { words, tag } = terminal.catalogue;
  const { bpm, form, exercises } = request;
  const shown = {
    ...({ lesson, form, tempi: bpm === null ? [] : [bpm], framesPerSecond: 30, buildUp: false } as const),
    over: { recorded: heard.recorded, heard: 'teacher', modelDb: 0, speeds: [1] } as const,
  };
  const films = exercises.map((exercise) => ({
    exercise,
    film: planFilm({ ...shown, exercises: [exercise] }, { shape: 'landscape', scheme: 'light' }, tools, tag),
  }));
  const bytes = films.map(({ film }) => estimateFilmBytes(film, '.mp4') + estimatePictureBytes(film));
  const size = sizeWords(
    words.sizes,
    bytes.reduce((sum, each) => sum + each, 0),
  );
  terminal.warn(words.build.filmsForPack({ count: films.length, size }));
  const kit = await loadKit(request.kit, RECORDING_RATE_HZ);
  const folder = await mkdtemp(join(tmpdir(), 'shedbook-pack-'));
  try {
    const made: ExerciseFilm[] = [];
    for (const [index, { exercise, film }] of films.entries()) {
      const n = index + 1;
      const tell = () => terminal.progress(words.build.filmForPack({ n, of: films.length }));
      const out = join(folder, `${exercise}.mp4`);
      await makeFilm({ film, kit, recordings: heard.recordings, out, signal, tell });
      made.push({ exercise, ending: extname(out), content: await readFile(out) });
    }
    return made;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** What a pack has besides the page. */
type Beside = Pick<PackRequest, 'demonstrations' | 'films'>;

async function make(
  lesson: Lesson,
  { request, tools }: Making,
  terminal: Speaker,
  signal: AbortSignal,
): Promise<Beside> {
  const { words } = terminal.catalogue;
  const { performances, films, form, bpm } = request;
  const order = { lesson, form, bpm: bpm ?? undefined, files: performances, signal };
  const heard = performances.length === 0 ? NONE : await hearAll(order, terminal);
  for (const each of heard.recorded) {
    const seconds = each.sounding.toSeconds - each.sounding.fromSeconds;
    const size = sizeWords(words.sizes, estimateDemonstrationBytes(seconds));
    const duration = durationWords(words.durations, seconds);
    terminal.warn(words.build.demonstration({ n: each.exercise, duration, size }));
  }
  const demonstrations = await makeDemonstrations(lesson, heard, signal);
  const made = films ? await makeFilms(lesson, { request, tools, heard, signal }, terminal) : [];
  return { demonstrations, films: made };
}

/**
 * Makes what is asked for of a pack besides the page.
 * @throws InputError where a performance cannot be followed, FFmpeg is missing, or it is interrupted
 */
export async function besidePage(lesson: Lesson, making: Making, terminal: Speaker): Promise<Beside> {
  const made = await unlessInterrupted((signal) => make(lesson, making, terminal, signal));
  if (!made) throw new InputError(({ words }) => words.build.packCancelled);
  return made;
}
