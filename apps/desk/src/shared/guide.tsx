/** The first visit: four steps to a printed sheet, where one is and what comes next. */

import { Button, remember, remembered } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './guide.module.css';

const KEY = 'guide';
const PUT_AWAY = 'put away';

/** The steps, as long as they have not been put away. @param at the step that one is at, from 0 */
export function Guide({ at, className }: { readonly at: number; readonly className?: string | undefined }) {
  const words = useWords().guide;
  const [shown, setShown] = useState(() => remembered(KEY) !== PUT_AWAY);
  if (!shown) return null;
  const putAway = () => {
    remember(KEY, PUT_AWAY);
    setShown(false);
  };
  return (
    <nav className={`${styles.guide} ${className ?? ''}`.trim()} data-part="guide" aria-label={words.title}>
      <div className={styles.inside}>
        <p>{words.title}</p>
        <ol>
          {words.steps.map((step, index) => (
            <li
              key={step}
              aria-current={index === at ? 'step' : undefined}
              data-past={index < at || undefined}
            >
              {step}
            </li>
          ))}
        </ol>
        <Button dress="bare" onClick={putAway}>
          {words.done}
        </Button>
      </div>
    </nav>
  );
}
