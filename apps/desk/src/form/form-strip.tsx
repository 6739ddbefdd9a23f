/** A form at a glance: its bars in order, each section as wide as it is long. */
import type { Form } from '@shedbook/core';
import { useWords } from '../words/words.tsx';
import styles from './form-strip.module.css';

/** The strip; what it says is said by the sections under it. */
export function FormStrip({ form }: { readonly form: Form }) {
  const words = useWords().forms;
  return (
    <div className={styles.strip} aria-hidden="true">
      {form.sections.map(({ play, bars, ending }, index) => (
        <div key={index} className={styles.section} data-play={play} style={{ flexGrow: bars }}>
          <span>
            {bars} {words.play[play]}
          </span>
          {ending && <span className={styles.ending}>›</span>}
        </div>
      ))}
      {form.repeat > 1 && <span className={styles.times}>{form.repeat}×</span>}
    </div>
  );
}
