/** What plays the exercises: the voice, its limb, and how loud it is there. */

import { type Lesson, LIMBS, VOICES } from '@shedbook/core';
import { Select } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';
import { BalanceRange } from './balance-range.tsx';
import styles from './groove-view.module.css';
import type { GrooveWork } from './use-groove.ts';

/** The choices. */
export function ExerciseVoice({ lesson, work }: { readonly lesson: Lesson; readonly work: GrooveWork }) {
  const words = useWords();
  const { comping } = lesson;
  return (
    <section className={styles.limb} aria-label={words.groove.exercises}>
      <h3>{words.groove.exercises}</h3>
      <div className={styles.choices}>
        <Select
          label={words.groove.exerciseVoice}
          value={comping}
          onChange={(event) => {
            const voice = VOICES.find((each) => each === event.target.value);
            if (voice) work.setComping(voice);
          }}
        >
          {VOICES.map((voice) => (
            <option key={voice} value={voice}>
              {words.voices[voice]}
            </option>
          ))}
        </Select>
        <Select
          label={words.groove.limb}
          value={lesson.limbs[comping]}
          onChange={(event) => {
            const limb = LIMBS.find((each) => each === event.target.value);
            if (limb) work.setLimb(comping, limb);
          }}
        >
          {LIMBS.map((limb) => (
            <option key={limb} value={limb}>
              {words.limbs[limb]}
            </option>
          ))}
        </Select>
        <BalanceRange
          key={comping}
          label={words.groove.exerciseLevel({ voice: comping })}
          kept={lesson.exerciseBalance[comping]}
          onKeep={(db) => work.setExerciseLevel(comping, db)}
        />
      </div>
    </section>
  );
}
