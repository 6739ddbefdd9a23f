/** `shedbook film`: a lesson as a film. */
import { Bpm, LESSON_TEMPI, type Lesson } from '@shedbook/core';
import {
  estimateFilmBytes,
  FILM_ENDINGS,
  type Film,
  type FilmEnding,
  type FilmLook,
  type FilmRequest,
  FRAME_RATES,
  HEARD_FROM,
  type OverPerformances,
  PICTURE_PLACES,
  planFilm,
  SCHEMES,
  SHAPES,
} from '@shedbook/film';
import { loadEngravingTools, loadKit } from '@shedbook/host';
import {
  estimatePictureBytes,
  type FilmProgress,
  filmEndingOf,
  type HeardPerformances,
  makeFilm,
} from '@shedbook/host/film';
import { RECORDING_RATE_HZ } from '@shedbook/pack';
import { durationWords, exercisesInWords, type LanguageTag, sizeWords } from '@shedbook/words';
import { type ClickOptionsAsked, readClick } from '../click-options.ts';
import { unlessInterrupted } from '../interrupt.ts';
import { readLessonFile, requireLesson } from '../lesson-file.ts';
import { readChoice, readExerciseList, refused, refuseOption, requireForm } from '../options.ts';
import { hearAll } from '../performances.ts';
import { type PerformanceOptions, readPerformances } from '../read-performances.ts';
import type { Speaker } from '../terminal.ts';

/** The options of the command line as they come, all text. */
export interface FilmOptions extends PerformanceOptions, ClickOptionsAsked {
  readonly out: string;
  readonly form?: string;
  readonly tempo?: string;
  readonly shape?: string;
  readonly scheme?: string;
  readonly rate?: string;
  readonly buildUp?: boolean;
  readonly picture?: string;
  readonly sound?: string;
  readonly modelLevel?: string;
  readonly speed?: string;
  readonly kit?: string;
  readonly json?: boolean;
}

/** A film over no performance. */
const NONE_HEARD: HeardPerformances = { recorded: [], recordings: new Map(), takes: [] };

/** Exit status of what was interrupted at the keyboard (128 and SIGINT, as shells have it). */
const INTERRUPTED = 130;

function keysOf<T extends string>(table: Readonly<Record<T, unknown>>): readonly T[] {
  return Object.keys(table) as T[];
}

function readTempi(text: string | undefined): readonly Bpm[] {
  if (text === undefined) return [];
  return text.split(',').map((each) => {
    const bpm = Number(each);
    if (each.trim() !== '' && bpm >= LESSON_TEMPI.least && bpm <= LESSON_TEMPI.most) return Bpm(bpm);
    return refuseOption('tempo', text, (expected) => expected.tempi(LESSON_TEMPI));
  });
}

function readEnding(out: string): FilmEnding {
  const ending = filmEndingOf(out);
  if (ending) return ending;
  return refuseOption('out', out, (expected) => expected.film({ endings: FILM_ENDINGS.join(', ') }));
}

/** Levels of the model beside the teacher, in dB. */
const MODEL_DB = { least: -40, most: 20, usual: -9 } as const;

function readModelDb(text: string | undefined): number {
  if (text === undefined) return MODEL_DB.usual;
  const db = Number(text);
  if (text.trim() !== '' && db >= MODEL_DB.least && db <= MODEL_DB.most) return db;
  return refuseOption('model-level', text, (expected) => expected.modelLevel(MODEL_DB));
}

/** Speeds at which performances are shown, in percent. */
const SPEEDS = { least: 25, most: 100 } as const;

function readSpeeds(text: string): readonly number[] {
  return text.split(',').map((each) => {
    const percent = Number(each);
    if (each.trim() !== '' && percent >= SPEEDS.least && percent <= SPEEDS.most) return percent / 100;
    return refuseOption('speed', text, (expected) => expected.speeds(SPEEDS));
  });
}

/** The exercises that are meant: those that are asked for, or those of which there are performances, or all. */
function readExercises(options: FilmOptions, lesson: Lesson): readonly number[] {
  const all = readExerciseList('exercise', options.exercise, lesson);
  const played = readPerformances(options, lesson).map(({ exercise }) => exercise);
  if (options.exercise !== undefined || played.length === 0) return all;
  return all.filter((number) => played.includes(number));
}

function readRequest(options: FilmOptions, lesson: Lesson, language: LanguageTag): FilmRequest {
  const rates = FRAME_RATES.map(String);
  return {
    lesson,
    exercises: readExercises(options, lesson),
    form: options.form === undefined ? null : requireForm(lesson, options.form),
    tempi: readTempi(options.tempo),
    framesPerSecond: Number(
      readChoice('rate', options.rate ?? '30', rates),
    ) as FilmRequest['framesPerSecond'],
    buildUp: options.buildUp ?? true,
    click: readClick(options, lesson),
    countAloud: options.countAloud ? language : null,
  };
}

function readLook({ shape = 'landscape', scheme = 'light', picture }: FilmOptions): FilmLook {
  const place = picture === undefined ? null : readChoice('picture', picture, [...PICTURE_PLACES, 'none']);
  return {
    ...(place === null ? {} : { picture: place === 'none' ? null : place }),
    shape: readChoice('shape', shape, keysOf(SHAPES)),
    scheme: readChoice('scheme', scheme, keysOf(SCHEMES)),
  };
}

/** Says what will be made, and how large it will be. */
function sayPlan(film: Film, ending: FilmEnding, { catalogue: { words }, warn }: Speaker): void {
  const rate = film.request.framesPerSecond;
  warn(
    words.film.plan({
      exercises: exercisesInWords(film.tools.said, film.request.exercises),
      duration: durationWords(words.durations, film.frames / rate),
      ...{ width: film.widthPx, height: film.heightPx, rate },
      size: sizeWords(words.sizes, estimateFilmBytes(film, ending) + estimatePictureBytes(film)),
    }),
  );
}

/** Says how far a film is, and how long the rest will take at the pace so far. */
function progressOf({ catalogue: { words }, progress }: Speaker): (of: FilmProgress) => void {
  let began: number | null = null;
  return ({ stage, part }) => {
    const percent = Math.floor(100 * part);
    if (stage === 'sound') return progress(words.film.sound({ percent }));
    began ??= Date.now();
    const leftSeconds = part > 0 ? ((Date.now() - began) / 1000) * (1 / part - 1) : 0;
    return progress(words.film.picture({ percent, left: durationWords(words.durations, leftSeconds) }));
  };
}

/** How performances are heard. */
function readManner(options: FilmOptions): Omit<OverPerformances, 'recorded'> {
  return {
    heard: readChoice('sound', options.sound ?? 'teacher', HEARD_FROM),
    modelDb: readModelDb(options.modelLevel),
    speeds: readSpeeds(options.speed ?? '100'),
  };
}

/**
 * Makes a film. @returns the exit status.
 * @throws InputError for a lesson with errors, an option that makes no sense, or where FFmpeg is missing or stops.
 */
export async function film(path: string, options: FilmOptions, terminal: Speaker): Promise<number> {
  const { words } = terminal.catalogue;
  const lesson = requireLesson(await readLessonFile(path), terminal);
  if (lesson.exercises.length === 0) throw refused(path, '', ({ withExercises }) => withExercises);
  const { tag } = terminal.catalogue;
  const [ending, look] = [readEnding(options.out), readLook(options)];
  const request = readRequest(options, lesson, tag);
  const manner = readManner(options);
  const began = Date.now();
  const made = await unlessInterrupted(async (signal) => {
    const order = { lesson, form: request.form, bpm: request.tempi[0], signal };
    const files = readPerformances(options, lesson);
    const heard = options.performance ? await hearAll({ ...order, files }, terminal) : NONE_HEARD;
    terminal.progress(words.film.planning);
    const asked = { ...request, over: { ...manner, recorded: heard.recorded } };
    const planned = planFilm(asked, look, await loadEngravingTools(), tag);
    sayPlan(planned, ending, terminal);
    const kit = await loadKit(options.kit ?? null, RECORDING_RATE_HZ, signal);
    const { recordings } = heard;
    return makeFilm({ film: planned, kit, recordings, out: options.out, signal, tell: progressOf(terminal) });
  });
  terminal.progress(null);
  if (!made) {
    terminal.warn(words.film.cancelled);
    return INTERRUPTED;
  }
  if (options.json) terminal.say(JSON.stringify({ files: made }, null, 2));
  else {
    terminal.say(
      words.film.madeIn({ duration: durationWords(words.durations, (Date.now() - began) / 1000) }),
    );
    for (const { what, path: file, bytes } of made)
      terminal.say(`  ${words.film.made[what].padEnd(10)} ${file} (${sizeWords(words.sizes, bytes)})`);
  }
  return 0;
}
