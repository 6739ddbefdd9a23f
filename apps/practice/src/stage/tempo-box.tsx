/** The tempo: read from afar, changed by buttons, a line, or taps. */

import { countedTempo, PLAYED_TEMPI, quarterTempo } from '@shedbook/core';
import { Icon, Slide } from '@shedbook/stand';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { LedgeButton } from './ledge-button.tsx';
import styles from './tempo-box.module.css';
import type { StageActions } from './use-stage-actions.ts';

/** Beats a minute that a press of a button adds. */
const STEP = 4;

/** The box. */
export function TempoBox({ actions }: { readonly actions: StageActions }) {
  const words = usePracticeWords().tempo;
  const { choice, choose, lesson } = usePracticeSession();
  const { meter } = lesson;
  const beats = countedTempo(meter, choice.bpm);
  const step = quarterTempo(meter, STEP);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className={styles.tempo} role="group" aria-label={words.title}>
      <LedgeButton aria-label={words.slower} onClick={() => actions.faster(-step)}>
        <Icon name="minus" />
      </LedgeButton>
      <output className={styles.says} data-part="tempo">
        <strong>{beats}</strong> {words.bpm}
      </output>
      <LedgeButton aria-label={words.faster} onClick={() => actions.faster(step)}>
        <Icon name="plus" />
      </LedgeButton>
      <LedgeButton onClick={actions.tap}>{words.tap}</LedgeButton>
      <Slide
        label={words.slider}
        says={`${beats} ${words.bpm}`}
        value={beats}
        min={countedTempo(meter, PLAYED_TEMPI.least)}
        max={countedTempo(meter, PLAYED_TEMPI.most)}
        onChange={(counted) => choose({ bpm: quarterTempo(meter, counted) })}
      />
    </div>
  );
}
