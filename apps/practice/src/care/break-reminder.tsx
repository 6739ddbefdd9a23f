/** A quiet line when it is time for a break; it can be put off. */
import { isBreakDue } from '@shedbook/coach';
import { Button } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './break-reminder.module.css';
import { PlayingTime } from './playing-time.ts';

/** Seconds between looks at the clock. */
const LOOK_SECONDS = 5;

/** The time of this page: going from exercise to exercise is no break. */
const time = new PlayingTime();

/** The line. */
export function BreakReminder() {
  const words = useHearingWords().care;
  const { playing } = usePracticeSession();
  const [isDue, setDue] = useState(false);
  useEffect(() => {
    const look = () => {
      time.look(performance.now() / 1000, playing);
      setDue(isBreakDue(time.withoutBreakSeconds));
    };
    look();
    const timer = setInterval(look, LOOK_SECONDS * 1000);
    return () => clearInterval(timer);
  }, [playing]);
  return (
    <div role="status" className={styles.reminder}>
      {isDue && (
        <>
          <p>{words.rest}</p>
          <Button
            onClick={() => {
              time.putOff();
              setDue(false);
            }}
          >
            {words.later}
          </Button>
        </>
      )}
    </div>
  );
}
