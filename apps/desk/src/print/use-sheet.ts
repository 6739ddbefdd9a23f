/** The pages of the open lesson as they would be printed, asked for whenever a change has been kept. */
import type { SheetPages } from '@shedbook/routes';
import { useEffect, useState } from 'react';
import { readPages } from '../document/api.ts';
import type { DocumentState } from '../document/lesson-document.ts';
import { useLanguage } from '../words/words.tsx';

/** How far the pages are; the last ones stay while new ones are made. */
export interface SheetState {
  readonly sheet: SheetPages | null;
  readonly status: 'ready' | 'preparing' | 'failed';
}

/** The pages of the lesson that is shown. */
export function useSheet({ id, text, keeping }: Pick<DocumentState, 'id' | 'text' | 'keeping'>): SheetState {
  const { tag } = useLanguage();
  const [state, setState] = useState<SheetState>({ sheet: null, status: 'preparing' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same lesson with another text has other pages
  useEffect(() => {
    if (keeping !== 'kept') return;
    let gone = false;
    setState((before) => ({ ...before, status: 'preparing' }));
    readPages(id, tag).then(
      (sheet) => !gone && setState({ sheet, status: 'ready' }),
      () => !gone && setState((before) => ({ ...before, status: 'failed' })),
    );
    return () => {
      gone = true;
    };
  }, [id, text, keeping, tag]);
  return state;
}
