/** Hearing oneself: the ear, what it heard, what follows, and the takes. */

import { LATENESS_DRAWN } from '@shedbook/playing';
import { Choices } from '@shedbook/stand';
import { lazy, Suspense } from 'react';
import { BreakReminder } from '../care/break-reminder.tsx';
import { useEvenKeeper } from '../log/use-even-keeper.ts';
import { useLogKeeper } from '../log/use-log-keeper.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeWords } from '../page/words.tsx';
import { useHearingSettings } from '../session/hearing-settings.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { AfterLoop } from './after-loop.tsx';
import { EarSwitch } from './ear-switch.tsx';
import styles from './hearing-body.module.css';
import { HearingOptions } from './hearing-options.tsx';
import { LatencyLine } from './latency-line.tsx';
import { LineCheckKey } from './line-check-key.tsx';
import { PadSetUp } from './pad-set-up.tsx';
import { useHearing } from './use-hearing.ts';

/** Comes when the ear is on: it draws takes, which nobody has before. */
const TakeInHand = lazy(() =>
  import('../takes/take-in-hand.tsx').then((module) => ({ default: module.TakeInHand })),
);

/** Playing freely: what it goes along with; nothing is heard or judged. */
function FreeBody() {
  const words = usePracticeWords().stage;
  const { choice, choose } = usePracticeSession();
  useLogKeeper(null);
  return (
    <section className={styles.panel} data-part="free" aria-labelledby="free-title">
      <h2 id="free-title">{words.free}</h2>
      <div className={styles.told}>
        <BreakReminder />
      </div>
      <div className={styles.more}>
        <p>{words.freeLead}</p>
        <Choices
          label={words.freeWith}
          value={choice.free}
          choices={[
            ['groove', words.freeGroove],
            ['click', words.freeClick],
          ]}
          onChange={(free) => choose({ free })}
        />
      </div>
    </section>
  );
}

function JudgedBody() {
  const words = useHearingWords();
  const [settings, change] = useHearingSettings();
  const view = useHearing(settings);
  const { ear, hearing } = view;
  useEvenKeeper(hearing);
  useLogKeeper(hearing);
  const { choice, exercise } = usePracticeSession();
  const isPad = choice.surface === 'pad' && exercise !== null;
  const isOn = ear.phase === 'on';
  return (
    <section
      className={styles.panel}
      data-part="hearing"
      aria-labelledby="hearing-title"
      data-ear={ear.phase}
    >
      <h2 id="hearing-title" className={isOn ? 'hidden-words' : undefined}>
        {words.hearing.title}
      </h2>
      <div className={styles.told}>
        <BreakReminder />
        {isOn && <AfterLoop view={view} />}
      </div>
      <div className={styles.more}>
        {isOn && <p className="quiet">{words.hearing.legend({ times: LATENESS_DRAWN })}</p>}
        <EarSwitch ear={ear} hearing={hearing} />
        {!isPad && ear.input !== 'kit' && <LineCheckKey ear={ear} hearing={hearing} />}
        {isOn && ear.input === 'microphone' && isPad && !ear.isMeasured && (
          <PadSetUp ear={hearing.ear} state={ear} />
        )}
        {isOn && (
          <>
            <LatencyLine ear={hearing.ear} state={ear} />
            <HearingOptions settings={settings} change={change} view={view} />
          </>
        )}
        {(isOn || view.ended) && (
          <Suspense fallback={null}>
            <TakeInHand ended={view.ended} letGo={view.letGo} settings={settings} change={change} />
          </Suspense>
        )}
      </div>
    </section>
  );
}

/** The panel. */
export default function HearingBody() {
  const { isFree } = usePracticeSession();
  return isFree ? <FreeBody /> : <JudgedBody />;
}
