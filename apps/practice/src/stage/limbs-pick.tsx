/** Which layers play, and which limbs the student plays. */
import { type Layer, type Lesson, LIMBS, type Limb, sideOf, type Voice } from '@shedbook/core';
import { Check, Choices } from '@shedbook/stand';
import type { PracticeWords } from '@shedbook/words';
import { usePracticeWords } from '../page/words.tsx';
import { voicesOfLimb } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './limbs-pick.module.css';

/** Voices that are written for a limb: in the groove, or in the exercise on the stand. */
function writtenVoices(lesson: Lesson, exercise: number | null, limb: Limb): readonly Voice[] {
  const parts = lesson.exercises.find((each) => each.number === exercise)?.parts ?? [];
  const written = new Set([...lesson.groove, ...parts].map((part) => part.voice));
  return voicesOfLimb(lesson, limb).filter((voice) => written.has(voice));
}

/** The limbs that the student plays. */
export function MinePick() {
  const words = usePracticeWords();
  const { lesson, exercise, choice, choose } = usePracticeSession();
  const limbs = LIMBS.filter((limb) => writtenVoices(lesson, exercise, limb).length > 0);
  const toggle = (limb: Limb, on: boolean) =>
    choose({ mine: on ? [...choice.mine, limb] : choice.mine.filter((each) => each !== limb) });
  return (
    <fieldset className={styles.mine}>
      <legend>{words.setting.mine}</legend>
      <p className="quiet">{words.setting.mineHint}</p>
      {limbs.map((limb) => {
        const voices = writtenVoices(lesson, exercise, limb).map((voice) => words.voices[voice]);
        const side = words.limbs[sideOf(limb, lesson.setUp)];
        return (
          <Check key={limb} checked={choice.mine.includes(limb)} onChange={(on) => toggle(limb, on)}>
            {words.setting.limb({ limb: side, what: voices.join(', ') })}
          </Check>
        );
      })}
    </fieldset>
  );
}

function layerWords(layers: readonly Layer[], index: number, words: PracticeWords): string {
  const joins = layers[index]?.joins ?? [];
  const names = joins.map((join) => (join === 'pattern' ? words.setting.pattern : words.voices[join]));
  return words.setting.layer({ n: index + 1, names: `${index === 0 ? '' : '+ '}${names.join(', ')}` });
}

/** How many layers play. */
export function LayersPick() {
  const words = usePracticeWords();
  const { lesson, choice, choose } = usePracticeSession();
  return (
    <Choices
      label={words.setting.layers}
      value={String(choice.layers)}
      choices={lesson.layers.map(
        (_, index) => [String(index + 1), layerWords(lesson.layers, index, words)] as const,
      )}
      onChange={(layers) => choose({ layers: Number(layers) })}
    />
  );
}
