/** The tempo: read from afar, changed by buttons, a line, or taps. */
import { Icon } from '@shedbook/stand';
import { usePracticeWords } from '../page/words.tsx';
import { TEMPO_RANGE } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Slide } from '../ui/controls.tsx';
import type { StageActions } from './use-stage-actions.ts';

/** Quarter notes a minute that a press of a button adds. */
const STEP = 4;

/** The box. */
export function TempoBox({ actions }: { readonly actions: StageActions }) {
  const words = usePracticeWords().tempo;
  const { choice, choose } = usePracticeSession();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className="tempo-box" role="group" aria-label={words.title}>
      <button
        type="button"
        className="button"
        aria-label={words.slower}
        onClick={() => actions.faster(-STEP)}
      >
        <Icon name="minus" />
      </button>
      <output className="tempo-says">
        <strong>{choice.bpm}</strong> {words.bpm}
      </output>
      <button type="button" className="button" aria-label={words.faster} onClick={() => actions.faster(STEP)}>
        <Icon name="plus" />
      </button>
      <button type="button" className="button tap" onClick={actions.tap}>
        {words.tap}
      </button>
      <Slide
        label={words.slider}
        says={`${choice.bpm} ${words.bpm}`}
        value={choice.bpm}
        min={TEMPO_RANGE.least}
        max={TEMPO_RANGE.most}
        onChange={(bpm) => choose({ bpm })}
      />
    </div>
  );
}
