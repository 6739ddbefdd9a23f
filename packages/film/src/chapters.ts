/** The chapters of a film: one for each of its scenes. */
import { countedTempo, Seconds } from '@shedbook/core';
import { headingOf } from './draw.ts';
import type { Film, StagedScene } from './film.ts';
import type { TitleScene } from './scene.ts';

/** A chapter. */
export interface Chapter {
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
  readonly title: string;
}

function titleOf(scene: TitleScene | StagedScene, film: Film): string {
  const { chapters } = film.tools.said;
  if (scene.kind === 'title') return chapters.title;
  if (scene.kind === 'groove') return chapters.groove;
  const bpm = countedTempo(scene.lesson.meter, scene.bpm);
  return chapters.exercise({ exercise: headingOf(scene, 0, film), bpm });
}

/** The chapters, in order and without gaps. */
export function chaptersOf(film: Film): readonly Chapter[] {
  const rate = film.request.framesPerSecond;
  return film.scenes.map((scene) => ({
    fromSeconds: Seconds(scene.startFrame / rate),
    toSeconds: Seconds((scene.startFrame + scene.frames) / rate),
    title: titleOf(scene, film),
  }));
}

/** A moment as lists of chapters have it: minutes and seconds, hours before them where there are any. */
function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  const pair = (value: number) => String(value).padStart(2, '0');
  const minutes = `${pair(Math.floor(whole / 60) % 60)}:${pair(whole % 60)}`;
  return whole < 3600 ? minutes : `${Math.floor(whole / 3600)}:${minutes}`;
}

/** The chapters as a list for a description: a line each, its beginning first. */
export function chapterList(chapters: readonly Chapter[]): string {
  return chapters.map(({ fromSeconds, title }) => `${clock(fromSeconds)} ${title}\n`).join('');
}
