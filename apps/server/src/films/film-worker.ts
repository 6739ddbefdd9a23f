/** The thread that makes films. */
import { dirname } from 'node:path';
import { parentPort } from 'node:worker_threads';
import { type Lesson, parseLesson } from '@shedbook/core';
import {
  askedForm,
  estimateFilmBytes,
  type Film,
  type FilmEnding,
  lookFor,
  measureFilm,
  planFilm,
  requestFor,
} from '@shedbook/film';
import { InputError, loadEngravingTools, loadKit } from '@shedbook/host';
import {
  endingHere,
  estimatePictureBytes,
  hearPerformances,
  makeFilm,
  NotPlayedError,
} from '@shedbook/host/film';
import { RECORDING_RATE_HZ } from '@shedbook/pack';
import type { FilmAnswer, FilmNews, FilmOrder, HearOrder } from './film-messages.ts';

/** About how large the film will be; pictures of performances are known once it is laid out. */
async function bytesOf(
  order: FilmOrder,
  { request, frames, ending }: Pick<Film, 'request' | 'frames'> & { readonly ending: FilmEnding },
): Promise<number> {
  const bytes = estimateFilmBytes({ frames, request }, ending);
  if (order.over.length === 0) return bytes;
  const film = planFilm(request, lookFor(order.wish), await loadEngravingTools(), order.wish.language);
  return bytes + Math.round(estimatePictureBytes(film));
}

/** What is heard of a performance. */
async function hear(lesson: Lesson, { path, exercise, form }: HearOrder): Promise<FilmAnswer> {
  const { signal } = new AbortController();
  const order = { lesson, form: askedForm(lesson, form), files: [{ exercise, path }], signal };
  try {
    const { recorded, takes } = await hearPerformances({ ...order, tell: () => {} });
    const [first] = recorded;
    if (!first) return { kind: 'not-followed' };
    return { kind: 'heard', heard: { recorded: first, path, faults: takes[0]?.faults ?? 0 } };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    if (!(error instanceof NotPlayedError)) return { kind: 'unreadable' };
    const { otherExercise } = error;
    return otherExercise === null
      ? { kind: 'not-followed' }
      : { kind: 'other-exercise', exercise: otherExercise };
  }
}

async function answer(order: FilmOrder | HearOrder): Promise<FilmAnswer> {
  const { lesson } = parseLesson(order.text, 'lesson');
  const asked = order.want === 'heard' ? [order.exercise] : order.wish.exercises;
  if (!lesson?.exercises.some(({ number }) => asked.includes(number))) return { kind: 'errors' };
  const ending = await endingHere();
  if (!ending) return { kind: 'no-ffmpeg' };
  if (order.want === 'heard') return hear(lesson, order);
  const { wish, stem } = order;
  const request = requestFor(
    lesson,
    wish,
    order.over.map(({ recorded }) => recorded),
  );
  if (stem === null) {
    const { frames, ...size } = measureFilm(request, wish.shape);
    const seconds = frames / request.framesPerSecond;
    const bytes = await bytesOf(order, { request, frames, ending });
    return { kind: 'planned', title: lesson.title, plan: { seconds, ...size, bytes } };
  }
  const tools = await loadEngravingTools();
  const film = planFilm(request, lookFor(order.wish), tools, wish.language);
  const recordings = new Map(order.over.map(({ recorded, path }) => [recorded, path]));
  const kit = await loadKit(null, RECORDING_RATE_HZ);
  const tell = (progress: Omit<FilmNews, 'kind'>) =>
    parentPort?.postMessage({ kind: 'progress', ...progress } satisfies FilmNews);
  const { signal } = new AbortController();
  const out = `${stem}${ending}`;
  return {
    kind: 'made',
    files: await makeFilm({ film, kit, recordings, out, folder: dirname(out), signal, tell }),
  };
}

parentPort?.on('message', (order: FilmOrder | HearOrder) => {
  answer(order).then(
    (reply) => parentPort?.postMessage(reply),
    (error: Error) => {
      const broken: FilmAnswer = { kind: 'broken', message: error.stack ?? error.message };
      parentPort?.postMessage(broken);
    },
  );
});
