/** The tempo: read from afar, changed by buttons, a line, or taps. */

import { PLAYED_TEMPI } from '@shedbook/core';
import { Icon, Slide } from '@shedbook/stand';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { LedgeButton } from './ledge-button.tsx';
import styles from './tempo-box.module.css';
import type { StageActions } from './use-stage-actions.ts';

/** Quarter notes a minute that a press of a button adds. */
const STEP = 4;

/** The box. */
export function TempoBox({ actions }: { readonly actions: StageActions }) {
  const words = usePracticeWords().tempo;
  const { choice, choose } = usePracticeSession();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className={styles.tempo} role="group" aria-label={words.title}>
      <LedgeButton aria-label={words.slower} onClick={() => actions.faster(-STEP)}>
        <Icon name="minus" />
      </LedgeButton>
      <output className={styles.says} data-part="tempo">
        <strong>{choice.bpm}</strong> {words.bpm}
      </output>
      <LedgeButton aria-label={words.faster} onClick={() => actions.faster(STEP)}>
        <Icon name="plus" />
      </LedgeButton>
      <LedgeButton onClick={actions.tap}>{words.tap}</LedgeButton>
      <Slide
        label={words.slider}
        says={`${choice.bpm} ${words.bpm}`}
        value={choice.bpm}
        min={PLAYED_TEMPI.least}
        max={PLAYED_TEMPI.most}
        onChange={(bpm) => choose({ bpm })}
      />
    </div>
  );
}
