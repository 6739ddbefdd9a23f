/** Exercises as the teacher plays them: kept with their lesson, listed and taken out. */
import { parseLesson } from '@shedbook/core';
import type { KeptDemonstration } from '@shedbook/routes';
import type { FilmMaker } from '../films/film-maker.ts';
import { demonstrationIn, standingOf } from '../sheet/kept-demonstrations.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { DemonstrationStore } from '../store/demonstrations.ts';
import type { LessonStore } from '../store/lessons.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** What demonstrations are kept with. */
export interface DemonstrationParts {
  readonly store: LessonStore;
  readonly demonstrations: DemonstrationStore;
  readonly films: FilmMaker;
  /** Makes packs, and demonstrations for them, in a thread of its own. */
  readonly packs: SheetMaker;
}

/** Answers the routes of demonstrations. */
export function demonstrationHandlers({ store, demonstrations, films, packs }: DemonstrationParts) {
  /** Those that are kept with a lesson, as the desk shows them. */
  const listed = async (id: string, text: string): Promise<readonly KeptDemonstration[]> => {
    const kept = await demonstrations.of(id);
    // Most lessons have none: a long text is not read for nothing.
    const lesson = kept.length === 0 ? null : parseLesson(text, 'lesson').lesson;
    return kept.map(({ id: demonstration, facts, keptAt, ...played }) => {
      const { number, isShown } = lesson ? standingOf(lesson, played) : { number: null, isShown: false };
      const seconds = demonstrationIn(facts)?.seconds ?? 0;
      return { id: demonstration, exercise: number, isShown, seconds, keptAt };
    });
  };
  return {
    listDemonstrations: async ({ params: { id } }) => {
      const lesson = await store.read(id);
      return lesson ? answer(await listed(id, lesson.text)) : refuse('no-such-lesson', {});
    },
    keepDemonstration: async ({ params: { id }, body: { performance } }, signal) => {
      const lesson = await store.read(id);
      if (!lesson) return refuse('no-such-lesson', {});
      const [heard] = films.heard([performance]) ?? [];
      if (!heard) return refuse('no-such-performance', {});
      const made = await packs.demonstrate(lesson.text, heard, { of: id, signal });
      if (!made) return refuse('lesson-has-errors', {});
      await demonstrations.keep(id, made);
      return answer(await listed(id, lesson.text));
    },
    eraseDemonstration: async ({ params: { demonstration } }) =>
      (await demonstrations.erase(demonstration)) ? answer(null) : refuse('no-such-demonstration', {}),
  } satisfies Partial<Handlers>;
}
