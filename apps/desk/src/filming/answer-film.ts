/** Answers what the page asks of films: what one will be, or the film itself. */
import { type Lesson, parseLesson } from '@shedbook/core';
import { estimateFilmBytes, measureFilm, requestFor } from '@shedbook/film';
import { RECORDING_RATE_HZ } from '@shedbook/pack';
import { createKit } from '@shedbook/sound';
import { filmKindHere } from './film-kind.ts';
import type { FilmNews, FilmOrder } from './messages.ts';

/** Tells the page something. */
type Tell = (news: FilmNews) => void;

async function answer({ want, wish, spoken }: FilmOrder, lesson: Lesson, tell: Tell): Promise<FilmNews> {
  const request = requestFor(lesson, wish, []);
  const { frames, ...size } = measureFilm(request, wish.shape);
  const frameRate = wish.framesPerSecond;
  const kind = await filmKindHere({ width: size.widthPx, height: size.heightPx, frameRate });
  if (!kind) return { kind: 'unable' };
  if (want === 'plan') {
    const bytes = estimateFilmBytes({ frames, request }, kind.ending);
    return { kind: 'planned', plan: { seconds: frames / frameRate, ...size, bytes } };
  }
  const [{ makeFilm }, { loadFilmTools }] = await Promise.all([
    import('./make-film.ts'),
    import('./film-tools.ts'),
  ]);
  const files = await makeFilm({
    ...{ lesson, wish, kind, spoken, tools: await loadFilmTools() },
    kit: createKit({ sampleRateHz: RECORDING_RATE_HZ }),
    tell: (stage, part) => tell({ kind: 'progress', stage, part }),
  });
  return { kind: 'made', title: lesson.title, files };
}

/** What came of an order. @param tell told meanwhile how far a film is */
export function answerFilm(order: FilmOrder, tell: Tell): Promise<FilmNews> {
  const { lesson } = parseLesson(order.text, 'lesson');
  return lesson ? answer(order, lesson, tell) : Promise.resolve({ kind: 'broken' });
}
