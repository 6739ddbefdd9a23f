/** Makes films beside the page, where the computer that runs the desk has no FFmpeg. */
import { type Lesson, parseLesson } from '@shedbook/core';
import { measureFilm, requestFor } from '@shedbook/film';
import { RECORDING_RATE_HZ } from '@shedbook/pack';
import { createKit } from '@shedbook/sound';
import { filmKindHere } from './film-kind.ts';
import type { FilmNews, FilmOrder } from './messages.ts';

/** Bytes of a second of film, sound and all, by frames a second: means of films of three demo lessons. */
const BYTES_PER_SECOND = { 30: 75_000, 60: 92_000 } as const;

const tell = (news: FilmNews) => self.postMessage(news);

async function answer({ want, wish, spoken }: FilmOrder, lesson: Lesson): Promise<FilmNews> {
  const { frames, ...size } = measureFilm(requestFor(lesson, wish, []), wish.shape);
  const frameRate = wish.framesPerSecond;
  const kind = await filmKindHere({ width: size.widthPx, height: size.heightPx, frameRate });
  if (!kind) return { kind: 'unable' };
  const seconds = frames / frameRate;
  if (want === 'plan')
    return { kind: 'planned', plan: { seconds, ...size, bytes: seconds * BYTES_PER_SECOND[frameRate] } };
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

self.onmessage = ({ data }: MessageEvent<FilmOrder>) => {
  const { lesson } = parseLesson(data.text, 'lesson');
  const answered = lesson ? answer(data, lesson) : Promise.resolve<FilmNews>({ kind: 'broken' });
  answered.then(tell, (error: unknown) => {
    console.error(error);
    tell({ kind: 'broken' });
  });
};
