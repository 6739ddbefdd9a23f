/** How a voice is played: one of each kind of word from the list, and a teacher's own words beside them. */

import {
  HOW_KINDS,
  HOW_OF,
  type How,
  type HowKind,
  type HowWord,
  isHowWord,
  type Voice,
} from '@shedbook/core';
import { Select } from '@shedbook/stand';
import { HowSign } from '@shedbook/stand/how-list';
import { useWords } from '../words/words.tsx';
import styles from './how-choice.module.css';
import { KeptField } from './kept-field.tsx';

interface HowChoiceProps {
  readonly legend: string;
  readonly voice: Voice;
  readonly how: How;
  readonly onHow: (how: How) => void;
}

/** The kinds of words that a voice knows, each with its words. */
function kindsOf(voice: Voice): readonly (readonly [HowKind, readonly HowWord[]])[] {
  const kinds = [...new Set(HOW_OF[voice].map((word) => HOW_KINDS[word]))];
  return kinds.map((kind) => [kind, HOW_OF[voice].filter((word) => HOW_KINDS[word] === kind)] as const);
}

/** A teacher's words as they can be read again: what stands between commas, none of it a word of the list. */
function ownWords(text: string): How {
  return text
    .split(',')
    .map((word) => word.trim().replaceAll(/\s+/g, ' '))
    .filter((word, index, all) => word !== '' && !isHowWord(word) && all.indexOf(word) === index);
}

/** The choice. */
export function HowChoice({ legend, voice, how, onHow }: HowChoiceProps) {
  const words = useWords();
  const own = how.filter((word) => !isHowWord(word));
  const listed = how.filter(isHowWord);
  const choose = (kind: HowKind, word: HowWord | undefined) => {
    const others = listed.filter((each) => HOW_KINDS[each] !== kind);
    onHow([...others, ...(word ? [word] : []), ...own]);
  };
  return (
    <fieldset className={styles.how} data-part="how-choice">
      <legend>
        {legend}
        {listed.map((word) => (
          <HowSign key={word} word={word} />
        ))}
      </legend>
      {kindsOf(voice).map(([kind, all]) => (
        <Select
          key={kind}
          label={words.groove.howKinds[kind]}
          value={listed.find((word) => HOW_KINDS[word] === kind) ?? ''}
          onChange={({ target }) =>
            choose(
              kind,
              all.find((word) => word === target.value),
            )
          }
        >
          <option value="">{words.groove.howOpen}</option>
          {all.map((word) => (
            <option key={word} value={word}>
              {words.how[word]}
            </option>
          ))}
        </Select>
      ))}
      <KeptField
        label={words.groove.howOwn}
        value={own.join(', ')}
        onKeep={(text) => onHow([...listed, ...ownWords(text)])}
      />
    </fieldset>
  );
}
