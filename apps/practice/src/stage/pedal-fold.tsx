/** Setting up a foot switch, folded away until somebody has one. */
import { type PedalBoard, PedalSetUp } from '@shedbook/stand';
import { usePracticeWords } from '../page/words.tsx';
import styles from './pedal-fold.module.css';

/** The fold. */
export function PedalFold({ board }: { readonly board: PedalBoard }) {
  const words = usePracticeWords().pedal;
  return (
    <details className={styles.pedal}>
      <summary>{words.title}</summary>
      <PedalSetUp board={board} words={words} />
    </details>
  );
}
