/** How limbs play: small drawn signs with the words beside them. */
import {
  type Exercise,
  HOW_SIGN_BOX,
  HOW_SIGN_STROKE,
  HOW_SIGNS,
  type HowWord,
  howEach,
  howWords,
  type Lesson,
  type Voice,
} from '@shedbook/core';
import { sayHow } from '@shedbook/words';
import styles from './how-list.module.css';

/** What it is said in. */
interface HowListWords {
  readonly voices: Readonly<Record<Voice, string>>;
  readonly how: Readonly<Record<HowWord, string>>;
}

interface HowListProps {
  /** The section that is played. */
  readonly section: Lesson;
  /** The exercise that is played, or null for the groove alone. */
  readonly exercise: Exercise | null;
  readonly words: HowListWords;
}

/** The sign of a word, as high as the text beside it. */
export function HowSign({ word }: { readonly word: HowWord }) {
  const { lines, filled } = HOW_SIGNS[word];
  return (
    <svg
      className={styles.sign}
      viewBox={`0 0 ${HOW_SIGN_BOX.width} ${HOW_SIGN_BOX.height}`}
      data-sign={word}
      aria-hidden="true"
    >
      <path d={lines} fill="none" stroke="currentColor" strokeWidth={HOW_SIGN_STROKE} strokeLinecap="round" />
      <path d={filled} fill="currentColor" />
    </svg>
  );
}

/** A line for each voice that something is said of; nothing where nothing is. */
export function HowList({ section, exercise, words }: HowListProps) {
  const said = howEach(section, exercise);
  if (said.length === 0) return null;
  return (
    <ul className={styles.list} data-part="how">
      {said.map(([voice, how]) => (
        <li key={voice}>
          {words.voices[voice]}:{' '}
          {howWords(how).map((word) => (
            <HowSign key={word} word={word} />
          ))}
          {sayHow(how, words.how)}
        </li>
      ))}
    </ul>
  );
}
