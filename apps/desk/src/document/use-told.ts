/** Saying what was done, with a way to undo it. */
import { useSay } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';

/** Says what was done; `undo` takes it back. */
export type Told = (text: string, undo: () => Promise<unknown>) => void;

/** @param attempt does what it is given, says what went wrong, and shows what is there then */
export function useTold(attempt: (work: () => Promise<void>) => Promise<unknown>): Told {
  const say = useSay();
  const { desk } = useWords();
  return (text, undo) =>
    say(text, {
      label: desk.undo,
      run: () =>
        void attempt(async () => {
          await undo();
        }),
    });
}
