/** Writing what comes before a section on the page: its subdivision, counted and clapped. */
import type { Lesson } from '@shedbook/core';
import type { DeskFact } from '@shedbook/words';
import { useDocument } from '../document/use-document.ts';
import { useSay } from '../words/words.tsx';

/** Writes a preparation before a section, by its number among all, from 0; the composer comes when it is asked for. */
export function usePreparing(): (lesson: Lesson, section: number) => Promise<void> {
  const document = useDocument();
  const say = useSay();
  return async (lesson, section) => {
    const { withPreparation } = await import('@shedbook/composer');
    document.edit(withPreparation(document.state().text, lesson, section, (fact: DeskFact) => say(fact)));
  };
}
