/** The sheet on which a student teaches the ear their kit; fetched when it is opened. */
import { Button, classes, closeSheet, Sheet } from '@shedbook/stand';
import type { LineCheckWords } from '@shedbook/words';
import { useEffect, useMemo, useState } from 'react';
import type { EarState } from '../ear/ear.ts';
import type { Hearing } from '../ear/hearing.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { LevelMeter } from '../ui/level-meter.tsx';
import inRow from '../ui/row.module.css';
import { KitsView } from './kits-view.tsx';
import { LearntView } from './learnt-view.tsx';
import styles from './line-check-sheet.module.css';
import { useLineCheckWords } from './line-check-words.ts';
import { lengthOf, voicesToCheck } from './turns.ts';
import { TurnsView } from './turns-view.tsx';
import { useKits } from './use-kits.ts';
import { useLineCheck } from './use-line-check.ts';

interface EarProps {
  readonly hearing: Hearing;
  readonly ear: EarState;
}

/** Opening the microphone, where it is not open yet. */
function NeedsMicrophone({ hearing, ear, words }: EarProps & { readonly words: LineCheckWords }) {
  const all = useHearingWords().hearing;
  return (
    <>
      <p>
        {words.needs} {all.privacy}
      </p>
      <p role="status">
        {ear.phase === 'opening' && all.opening.microphone}
        {ear.refusal && all.refusals.microphone[ear.refusal]}
      </p>
      <Button
        dress="strong"
        disabled={ear.phase === 'opening'}
        onClick={() => void hearing.open('microphone')}
      >
        {all.microphone}
      </Button>
    </>
  );
}

function LineCheck({ hearing, ear, words }: EarProps & { readonly words: LineCheckWords }) {
  const { protect } = useHearingWords().care;
  const { pack } = usePracticeSession();
  const voices = useMemo(() => voicesToCheck(pack.lesson), [pack.lesson]);
  const kits = useKits(hearing);
  const { step, begin, again, leave, context } = useLineCheck(hearing);
  const [kept, setKept] = useState<string | null>(null);
  const isOn = ear.phase === 'on';
  const isPlaying = step.at === 'playing';
  useEffect(() => {
    if (isPlaying && !isOn) leave();
  }, [isPlaying, isOn]);
  const isAtRest = step.at === 'ready' || step.at === 'failed';
  return (
    <div className={classes(styles.part, styles.sheet)} data-part="line-check" data-step={step.at}>
      {isAtRest && (
        <>
          <p role="status" data-part="line-check-kept">
            {kept !== null && <strong>{words.kept({ name: kept })}</strong>}
            {step.at === 'failed' && words.failed}
          </p>
          <KitsView kits={kits} voices={voices} words={words} />
          <p>{words.lead}</p>
          <p>{words.how({ voices: voices.length, seconds: Math.round(lengthOf(voices.length)) })}</p>
          <p className="quiet">
            {words.holds} {protect}
          </p>
          {isOn && ear.levelDb !== null && (
            <p className={styles.level}>
              <LevelMeter levelDb={ear.levelDb} />
            </p>
          )}
        </>
      )}
      {isPlaying && (
        <TurnsView
          {...{ context, words, voices: step.voices, startSeconds: step.startSeconds }}
          levelDb={ear.levelDb}
        />
      )}
      {step.at === 'learning' && <p role="status">{words.learning}</p>}
      {step.at === 'learnt' && (
        <LearntView
          {...{ learnt: step.learnt, voices, kits, words, again }}
          onKept={(name) => {
            setKept(name);
            leave();
          }}
        />
      )}
      {isAtRest && !isOn && <NeedsMicrophone hearing={hearing} ear={ear} words={words} />}
      {isOn && step.at !== 'learnt' && (
        <div className={inRow.row}>
          <Button dress={isAtRest ? 'strong' : 'plain'} onClick={isAtRest ? () => begin(voices) : leave}>
            {isAtRest ? words.start : words.leave}
          </Button>
        </div>
      )}
    </div>
  );
}

/** The sheet. */
export default function LineCheckSheet({ onClose, ...ears }: EarProps & { readonly onClose: () => void }) {
  const words = useLineCheckWords();
  const { close } = useHearingWords();
  if (!words) return null;
  return (
    <Sheet title={words.title} onClose={onClose} actions={<Button onClick={closeSheet}>{close}</Button>}>
      <LineCheck {...ears} words={words} />
    </Sheet>
  );
}
