/** Exercises as the teacher plays them, those that are kept with the lesson. */
import type { KeptDemonstration } from '@shedbook/routes';
import { Button, Icon, Problem } from '@shedbook/stand';
import { durationWords } from '@shedbook/words';
import { useWords } from '../words/words.tsx';
import styles from './performances.module.css';
import type { Demonstrations } from './use-demonstrations.ts';

function Told({ kept: { exercise, isShown, seconds } }: { readonly kept: KeptDemonstration }) {
  const words = useWords();
  const duration = durationWords(words.durations, seconds);
  if (exercise === null) return words.print.goneSince({ duration });
  const told = words.print.keptOf({ n: exercise, duration });
  return isShown ? told : `${told}: ${words.print.changedSince}`;
}

/** The list; nothing where nothing is kept. */
export function KeptDemonstrations({ kept, why, erase }: Demonstrations) {
  const words = useWords().print;
  return (
    <div role="status">
      {kept.length > 0 && <p className="quiet">{words.keptPlaying}</p>}
      <ul className={styles.rows} data-part="kept-demonstrations">
        {kept.map((each) => (
          <li key={each.id}>
            <span>
              <Told kept={each} />
            </span>
            <Button
              dress="bare"
              aria-label={each.exercise === null ? words.eraseGone : words.erasePlaying({ n: each.exercise })}
              onClick={() => erase(each.id)}
            >
              <Icon name="close" />
            </Button>
          </li>
        ))}
      </ul>
      {why !== null && <Problem>{why}</Problem>}
    </div>
  );
}
