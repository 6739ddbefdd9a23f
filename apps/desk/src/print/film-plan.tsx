/** What a film will be, before it is made. */
import type { FilmWish } from '@shedbook/routes';
import { durationWords, sizeWords } from '@shedbook/words';
import { useWords } from '../words/words.tsx';
import { useFilmPlan } from './use-film.ts';

/** What it will be: how long, how large, or why it cannot be. */
export function Plan({ id, wish }: { readonly id: string; readonly wish: FilmWish }) {
  const words = useWords();
  const plan = useFilmPlan(id, wish);
  if (plan === null || typeof plan === 'string') return plan;
  return words.films.plan({
    duration: durationWords(words.durations, plan.seconds),
    ...{ width: plan.widthPx, height: plan.heightPx },
    size: sizeWords(words.sizes, plan.bytes),
  });
}
