/** What somebody asks of a film, in the words of a form, and what is planned of it. */
import { Bpm, type Form, formNamed, type Lesson, sectionsOf } from '@shedbook/core';
import { FILM_WORDS, type LanguageTag, SHEET_WORDS } from '@shedbook/words';
import { createFilm, type Film, type FilmLook } from './film.ts';
import type { PicturePlace } from './layout.ts';
import { FULL_SIZE, type SchemeName, SHAPES, type ShapeName } from './look.data.ts';
import type { OverPerformances, Recorded } from './recorded.ts';
import type { FrameRate } from './scene.ts';
import { type FilmRequest, frameCount, planScenes } from './scenes.ts';

/** What is asked of a film. */
export interface AskedFilm {
  readonly exercises: readonly number[];
  /** Name of the form; null for the usual one. */
  readonly form: string | null;
  /** Quarter notes a minute; null for the start tempo. */
  readonly bpm: number | null;
  readonly framesPerSecond: FrameRate;
  readonly buildUp: boolean;
  readonly countAloud: boolean;
  readonly shape: ShapeName;
  readonly scheme: SchemeName;
  readonly language: LanguageTag;
  readonly over: {
    readonly picture: PicturePlace | 'none' | null;
    readonly heard: OverPerformances['heard'];
    readonly speeds: OverPerformances['speeds'];
  } | null;
}

/** How much louder the kit is than the recording where both are heard, in dB. */
const MODEL_DB = -9;

/** A form of a lesson by its name; null for the usual one. */
export function askedForm(lesson: Lesson, name: string | null): Form | null {
  const forms = sectionsOf(lesson).flatMap((section) => section.forms);
  return name === null ? null : formNamed({ forms }, name);
}

/** What is asked of a lesson, over performances of it; exercises that it does not have are passed over. */
export function requestFor(lesson: Lesson, asked: AskedFilm, recorded: readonly Recorded[]): FilmRequest {
  const { heard, speeds } = asked.over ?? { heard: 'teacher', speeds: [] };
  return {
    lesson,
    exercises: asked.exercises,
    form: askedForm(lesson, asked.form),
    tempi: asked.bpm === null ? [] : [Bpm(asked.bpm)],
    framesPerSecond: asked.framesPerSecond,
    buildUp: asked.buildUp,
    click: asked.countAloud ? {} : null,
    countAloud: asked.countAloud ? asked.language : null,
    over: { recorded, heard, modelDb: MODEL_DB, speeds },
  };
}

/** How it is asked to look. */
export function lookFor({ shape, scheme, over }: AskedFilm): FilmLook {
  const picture = over?.picture ?? null;
  return { shape, scheme, ...(picture === null ? {} : { picture: picture === 'none' ? null : picture }) };
}

/** Plans a film that speaks a language. @throws RangeError where the lesson has none of the exercises */
export function planFilm(
  request: FilmRequest,
  look: FilmLook,
  { engraver, fonts }: Pick<Film['tools'], 'engraver' | 'fonts'>,
  language: LanguageTag,
): Film {
  const tools = { engraver, fonts, words: SHEET_WORDS[language], said: FILM_WORDS[language] };
  return createFilm(request, look, tools);
}

/** The same film in another language, for its captions. */
export function filmIn(film: Film, language: LanguageTag): Film {
  const words = { words: SHEET_WORDS[language], said: FILM_WORDS[language] };
  return { ...film, tools: { ...film.tools, ...words } };
}

/** How many frames a film will have and how large its picture will be, before anything is engraved. */
export function measureFilm(request: FilmRequest, shape: ShapeName) {
  const { widthMm, heightMm } = SHAPES[shape];
  return {
    frames: frameCount(planScenes(request)),
    widthPx: widthMm * FULL_SIZE,
    heightPx: heightMm * FULL_SIZE,
  };
}
