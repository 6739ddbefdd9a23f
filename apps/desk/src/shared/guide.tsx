/** The first visit: four steps to a printed sheet, where one is and what comes next. */

import { remember, remembered } from '@shedbook/stand';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useWords } from '../words/words.tsx';
import './guide.css';

const KEY = 'guide';
const PUT_AWAY = 'put away';

/** The steps, as long as they have not been put away. @param at the step that one is at, from 0 */
export function Guide({ at }: { readonly at: number }) {
  const words = useWords().guide;
  const [shown, setShown] = useState(() => remembered(KEY) !== PUT_AWAY);
  if (!shown) return null;
  const putAway = () => {
    remember(KEY, PUT_AWAY);
    setShown(false);
  };
  return (
    <nav className="guide" aria-label={words.title}>
      <div className="guide-inside">
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
        <Button className="button bare" onPress={putAway}>
          {words.done}
        </Button>
      </div>
    </nav>
  );
}
