/** Copying, turning and moving what is chosen: a beat, a bar, or the exercises that are selected. */
import { type Exercise, VOICES } from '@shedbook/core';
import { Button, Choices, Icon, Select } from '@shedbook/stand';
import type { Unit } from '../edit/rearrange.ts';
import { useWords } from '../words/words.tsx';
import styles from './rearrange-tools.module.css';
import type { Rearranging } from './rearranging.ts';
import type { Rearrangement } from './use-rearranging.ts';

/** What the tools are given. */
export interface RearrangeToolsProps {
  readonly exercise: Exercise;
  /** Which of its voices is being written, from 0. */
  readonly part: number;
  readonly rearranging: Rearrangement;
}

const ACTS = [
  'copy',
  'cut',
  'paste',
  'backwards',
  'earlier',
  'later',
] as const satisfies readonly Rearranging[];

/** The tools. */
export function RearrangeTools({ exercise, part, rearranging }: RearrangeToolsProps) {
  const { unit, count, isSelecting, canPaste } = rearranging;
  const words = useWords();
  const own = exercise.parts[part]?.voice;
  const free = VOICES.filter((voice) => exercise.parts.every((each) => each.voice !== voice));
  return (
    <div className={styles.opened}>
      <Choices<Unit>
        label={words.rearrange.what}
        value={unit}
        choices={[
          ['beat', words.rearrange.beat],
          ['bar', words.rearrange.bar],
          ['exercise', count > 1 ? words.rearrange.exercises({ n: count }) : words.rearrange.exercise],
        ]}
        onChange={rearranging.setUnit}
      />
      <Button
        aria-pressed={isSelecting}
        className={styles.toggle}
        onClick={() => rearranging.setSelecting(!isSelecting)}
      >
        <Icon name="check" />
        {words.rearrange.selectSeveral}
      </Button>
      <div className={styles.acts}>
        {ACTS.map((act) => (
          <Button key={act} disabled={act === 'paste' && !canPaste} onClick={() => rearranging.run(act)}>
            {words.rearrange.acts[act]}
          </Button>
        ))}
      </div>
      {own && (
        <Select
          label={words.rearrange.onVoice}
          value={own}
          onChange={(event) => {
            const voice = free.find((each) => each === event.target.value);
            if (voice) rearranging.putOn(voice);
          }}
        >
          {[own, ...free].map((voice) => (
            <option key={voice} value={voice}>
              {words.voices[voice]}
            </option>
          ))}
        </Select>
      )}
    </div>
  );
}
