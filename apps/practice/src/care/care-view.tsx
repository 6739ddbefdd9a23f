/** Care for ears and body: local rules first, what a level allows, and what common sense says. */
import { adviseHearing, listeningTimeOf } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';
import { Choices, momentNow, Slide } from '@shedbook/stand';
import { durationWords } from '@shedbook/words';
import { useHearingWords } from '../page/hearing-words.ts';
import { Folded } from '../ui/folded.tsx';
import styles from './care-view.module.css';
import { LEVEL_RANGE, useEarSetting } from './ear-setting.ts';

function Exposure({ log }: { readonly log: PracticeLog }) {
  const { care: words, durations } = useHearingWords();
  const [setting, change] = useEarSetting();
  const { levelDba, listener } = setting;
  const { leftTodaySeconds, leftThisWeekSeconds } = adviseHearing(listeningTimeOf(log, momentNow(), setting));
  const left = Math.min(leftTodaySeconds, leftThisWeekSeconds);
  const isWeek = leftThisWeekSeconds < leftTodaySeconds;
  return (
    <div className={styles.exposure}>
      <h3>{words.exposure}</h3>
      <div className={styles.level}>
        <span className={styles.label} aria-hidden="true">
          {words.level}: <strong>{words.db({ db: levelDba })}</strong>
        </span>
        <Slide
          label={words.level}
          value={levelDba}
          min={LEVEL_RANGE.least}
          max={LEVEL_RANGE.most}
          says={words.db({ db: levelDba })}
          onChange={(next) => change({ levelDba: next })}
        />
      </div>
      <p className="quiet">{words.meter}</p>
      <Choices
        label={words.whose}
        value={listener}
        choices={(['adult', 'child'] as const).map((each) => [each, words.listeners[each]] as const)}
        onChange={(next) => change({ listener: next })}
      />
      <p role="status" className={styles.left} data-part="left">
        {left === 0
          ? words.usedUp({ db: levelDba })
          : words.left({ db: levelDba, time: durationWords(durations, left), span: isWeek ? 'week' : 'day' })}
      </p>
      <p className="quiet">{words.source}</p>
    </div>
  );
}

/** The view. */
export function CareView({ log }: { readonly log: PracticeLog }) {
  const words = useHearingWords().care;
  return (
    <Folded title={words.title} part="care-view">
      <p>
        <strong>{words.first}</strong>
      </p>
      <ul className={styles.list}>
        {[words.warmUp, words.protect, words.pain, words.ringing].map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <Exposure log={log} />
    </Folded>
  );
}
