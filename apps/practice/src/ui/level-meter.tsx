/** How loud the microphone is: a bar, and in words. */
import { useHearingWords } from '../page/hearing-words.ts';
import styles from './level-meter.module.css';
import { levelName } from './level-name.ts';

/** Levels that fill nothing and all of the bar, in dB re full scale. */
const EMPTY_DB = -60;
const FULL_DB = 0;

/** The meter. @param levelDb peak in dB re full scale */
export function LevelMeter({ levelDb }: { readonly levelDb: number }) {
  const words = useHearingWords().hearing;
  const percent = (100 * (levelDb - EMPTY_DB)) / (FULL_DB - EMPTY_DB);
  return (
    <>
      <span className={styles.meter} aria-hidden="true">
        <span style={{ inlineSize: `${Math.max(0, Math.min(100, percent))}%` }} />
      </span>
      {words.levels[levelName(levelDb)]}
    </>
  );
}
