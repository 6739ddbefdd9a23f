/** What an exercise is: a bar by itself, or a phrase of some bars. */
import { PHRASE_BARS } from '@shedbook/composer';
import { PHRASE_FORMS, type PhraseForm } from '@shedbook/core';
import { Choices } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';

interface PhraseChoiceProps {
  readonly phrase: PhraseForm | null;
  readonly bars: number;
  readonly onChange: (phrase: PhraseForm | null, bars: number) => void;
}

const SINGLE = 'single';

/** Single bars, or phrases of some bars. */
export function PhraseChoice({ phrase, bars, onChange }: PhraseChoiceProps) {
  const words = useWords().compose;
  const lengths = phrase === null ? [] : PHRASE_BARS[phrase];
  const choose = (next: PhraseForm | typeof SINGLE) =>
    next === SINGLE ? onChange(null, 1) : onChange(next, PHRASE_BARS[next][0] ?? 1);
  const forms = PHRASE_FORMS.map((form) => [form, words.phrases[form]] as const);
  return (
    <>
      <Choices
        label={words.exercises}
        value={phrase ?? SINGLE}
        choices={[[SINGLE, words.singleBars], ...forms]}
        onChange={choose}
      />
      {lengths.length > 0 && (
        <Choices
          label={words.phraseBars}
          value={String(bars)}
          choices={lengths.map((length) => [String(length), String(length)])}
          onChange={(next) => onChange(phrase, Number(next))}
        />
      )}
    </>
  );
}
