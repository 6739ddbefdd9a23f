/** Setting up for a pad or a table, in about twenty seconds: where the phone lies, how loud, and the timing by clicks. */
import { Button } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import type { Ear, EarState } from '../ear/ear.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { levelName } from '../ui/level-name.ts';
import inRow from '../ui/row.module.css';
import styles from './pad-set-up.module.css';
import { useCheck } from './use-check.ts';

/** Taps that are asked for before the timing. */
const TAPS = 4;

/** Steps in order. */
type Step = 'place' | 'loud' | 'timing' | 'ready';

/** Counts how often the level rose to where it is heard well. */
function useTaps(state: EarState, isCounting: boolean): { readonly taps: number; readonly isLoud: boolean } {
  const [taps, setTaps] = useState(0);
  const [wasLow, setLow] = useState(true);
  const [isLoud, setLoud] = useState(false);
  const level = state.levelDb === null ? 'silent' : levelName(state.levelDb);
  useEffect(() => {
    if (!isCounting) return;
    const isHeard = level === 'good' || level === 'loud';
    if (level === 'loud') setLoud(true);
    if (isHeard && wasLow) setTaps((before) => before + 1);
    setLow(!isHeard);
  }, [level, isCounting, wasLow]);
  return { taps, isLoud };
}

/** The steps, one at a time. */
export function PadSetUp({ ear, state }: { readonly ear: Ear; readonly state: EarState }) {
  const words = useHearingWords().pad;
  const [step, setStep] = useState<Step>('place');
  const { taps, isLoud } = useTaps(state, step === 'loud');
  const { check, run } = useCheck(ear);
  const isHeard = step === 'loud' && taps >= TAPS;
  useEffect(() => {
    if (isHeard) setStep('timing');
  }, [isHeard]);
  useEffect(() => {
    if (check.at === 'done') setStep('ready');
  }, [check.at]);
  return (
    <section className={styles.steps} data-part="pad-set-up" data-step={step} aria-label={words.title}>
      <div role="status">
        <p>
          <strong>{words.steps[step]}</strong>
        </p>
        {step === 'loud' && <p>{words.taps({ n: Math.min(taps, TAPS), of: TAPS })}</p>}
        {step === 'loud' && isLoud && <p>{words.tooLoud}</p>}
        {step === 'timing' && check.at === 'running' && <p>{words.checking}</p>}
        {step === 'timing' && check.at === 'failed' && <p>{words.notHeard}</p>}
      </div>
      <div className={inRow.row}>
        {step === 'place' && (
          <Button dress="strong" onClick={() => setStep('loud')}>
            {words.lies}
          </Button>
        )}
        {step === 'timing' && (
          <Button dress="strong" disabled={check.at === 'running'} onClick={() => void run()}>
            {words.click}
          </Button>
        )}
        {step !== 'ready' && step !== 'place' && (
          <Button onClick={() => setStep(step === 'loud' ? 'timing' : 'ready')}>{words.skip}</Button>
        )}
      </div>
    </section>
  );
}
