/** The number of a bar: pressed, its bar goes round alone until it is pressed again. */
import { useWords } from '../words/words.tsx';
import styles from './bar-loop.module.css';
import { useSound } from './sound-context.tsx';

interface BarLoopProps {
  readonly exercise: number;
  /** Bar of the exercise, from 0. */
  readonly bar: number;
}

/** The number. */
export function BarLoop({ exercise, bar }: BarLoopProps) {
  const words = useWords().sound;
  const { choice, choose } = useSound();
  const on = choice.exercise === exercise && choice.bar === bar;
  return (
    <button
      type="button"
      className={styles.barLoop}
      aria-pressed={on}
      aria-label={words.loopBar({ n: bar + 1 })}
      onClick={() => choose({ exercise, bar: on ? null : bar })}
    >
      {bar + 1}
    </button>
  );
}

/** The numbers of all bars of an exercise, where it has several. */
export function BarLoops({ exercise, bars }: { readonly exercise: number; readonly bars: number }) {
  const words = useWords().sound;
  if (bars < 2) return null;
  return (
    <fieldset className={styles.barLoops}>
      <legend>{words.oneBar}</legend>
      {Array.from({ length: bars }, (_, bar) => (
        <BarLoop key={bar} exercise={exercise} bar={bar} />
      ))}
    </fieldset>
  );
}
