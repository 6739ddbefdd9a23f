/** What a film will be, before it is made. */
import type { FilmWish } from '@shedbook/routes';
import { durationWords, sizeWords } from '@shedbook/words';
import { useWords } from '../words/words.tsx';
import { useFilmPlan } from './use-film.ts';

/** What it will be: how long, how large, who makes it, or why it cannot be. */
export function Plan({ id, wish }: { readonly id: string; readonly wish: FilmWish }) {
  const words = useWords();
  const planned = useFilmPlan(id, wish);
  if (planned === null || typeof planned === 'string') return planned;
  const { plan, isMadeHere } = planned;
  const said = words.films.plan({
    duration: durationWords(words.durations, plan.seconds),
    ...{ width: plan.widthPx, height: plan.heightPx },
    size: sizeWords(words.sizes, plan.bytes),
  });
  return isMadeHere ? `${said}. ${words.films.madeHere}` : said;
}
