/** The thread that makes films. */
import { dirname } from 'node:path';
import { parentPort } from 'node:worker_threads';
import { Bpm, formNamed, type Lesson, parseLesson, sectionsOf } from '@shedbook/core';
import { loadEngravingTools, loadKit } from '@shedbook/host';
import { canEncode, estimateFilmBytes, makeFilm, measureFilm, planFilm } from '@shedbook/host/film';
import { RECORDING_RATE_HZ } from '@shedbook/pack';
import type { FilmAnswer, FilmNews, FilmOrder } from './film-messages.ts';

/** What is asked of the lesson; what it does not have is passed over. */
function requestOf(lesson: Lesson, { wish }: FilmOrder): Parameters<typeof planFilm>[0] {
  const forms = sectionsOf(lesson).flatMap((section) => section.forms);
  return {
    lesson,
    exercises: wish.exercises,
    form: wish.form === null ? null : formNamed({ forms }, wish.form),
    tempi: wish.bpm === null ? [] : [Bpm(wish.bpm)],
    framesPerSecond: 30,
    buildUp: wish.buildUp,
  };
}

async function answer(order: FilmOrder): Promise<FilmAnswer> {
  const { lesson } = parseLesson(order.text, 'lesson');
  const { wish, out } = order;
  if (!lesson?.exercises.some(({ number }) => wish.exercises.includes(number))) return { kind: 'errors' };
  if (!(await canEncode('.mp4'))) return { kind: 'no-ffmpeg' };
  const request = requestOf(lesson, order);
  if (out === null) {
    const { frames, ...size } = measureFilm(request, wish.shape);
    const seconds = frames / request.framesPerSecond;
    const bytes = estimateFilmBytes({ frames, request }, '.mp4');
    return { kind: 'planned', title: lesson.title, plan: { seconds, ...size, bytes } };
  }
  const tools = await loadEngravingTools();
  const film = planFilm(request, { shape: wish.shape, scheme: wish.scheme }, tools, wish.language);
  const kit = await loadKit(null, RECORDING_RATE_HZ);
  const tell = (progress: Omit<FilmNews, 'kind'>) =>
    parentPort?.postMessage({ kind: 'progress', ...progress } satisfies FilmNews);
  const { signal } = new AbortController();
  return { kind: 'made', files: await makeFilm({ film, kit, out, folder: dirname(out), signal, tell }) };
}

parentPort?.on('message', (order: FilmOrder) => {
  answer(order).then(
    (reply) => parentPort?.postMessage(reply),
    (error: Error) => {
      const broken: FilmAnswer = { kind: 'broken', message: error.stack ?? error.message };
      parentPort?.postMessage(broken);
    },
  );
});
