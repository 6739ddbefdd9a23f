/** The first visit: the steps from a groove to a sheet that is handed out, where one is and what comes next. */

import { Button, remember, remembered } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import { pathOf, type Route, readRoute } from './address.ts';
import styles from './guide.module.css';
import { go, usePath } from './route.ts';

const KEY = 'guide';
const PUT_AWAY = 'put away';

/** The steps, in order. */
const STEPS = ['open', 'groove', 'cells', 'write', 'hear', 'print', 'hand out'] as const;

/** A step of the way. */
export type GuideStep = (typeof STEPS)[number];

const VIEWS = { groove: 'groove', cells: 'compose', write: 'page', hear: 'page', print: 'print' } as const;

/** Where a step is done; null for a lesson's step while none is open. */
function placeOf(step: GuideStep, here: Route): Route | null {
  if (step === 'open') return { at: 'desk' };
  if (step === 'hand out') return { at: 'students' };
  return here.at === 'lesson' ? { at: 'lesson', id: here.id, view: VIEWS[step] } : null;
}

interface GuideProps {
  /** The step that one is at. */
  readonly at: GuideStep;
  readonly className?: string | undefined;
}

/** The steps, as long as they have not been put away; each leads to where it is done. */
export function Guide({ at, className }: GuideProps) {
  const words = useWords().guide;
  const here = readRoute(usePath());
  const [shown, setShown] = useState(() => remembered(KEY) !== PUT_AWAY);
  if (!shown) return null;
  const now = STEPS.indexOf(at);
  const putAway = () => {
    remember(KEY, PUT_AWAY);
    setShown(false);
  };
  return (
    <nav
      className={`${styles.guide} ${className ?? ''}`.trim()}
      data-part="guide"
      data-begins={now === 0 || undefined}
      aria-label={words.title}
    >
      <div className={styles.inside}>
        <p>{words.title}</p>
        <ol>
          {STEPS.map((step, index) => {
            const place = step === at ? null : placeOf(step, here);
            return (
              <li
                key={step}
                aria-current={step === at ? 'step' : undefined}
                data-step={index + 1}
                data-past={index < now || undefined}
              >
                {place ? (
                  <a
                    href={pathOf(place)}
                    onClick={(event) => {
                      if (event.metaKey || event.ctrlKey || event.shiftKey) return;
                      event.preventDefault();
                      go(place);
                    }}
                  >
                    {words.steps[index]}
                  </a>
                ) : (
                  words.steps[index]
                )}
              </li>
            );
          })}
        </ol>
        <Button dress="bare" onClick={putAway}>
          {words.done}
        </Button>
      </div>
    </nav>
  );
}
