/** The bar and the beat that are heard, beside what plays. */
import { type BeatHeard, HeardBeat } from './heard-beat.tsx';
import styles from './ledge-count.module.css';

const barAndBeat = ({ bar, beat }: BeatHeard) => `${Math.max(0, bar) || '–'} · ${beat}`;

/** The count. */
export function LedgeCount() {
  return <HeardBeat part="ledge-count" className={styles.count} says={barAndBeat} />;
}
