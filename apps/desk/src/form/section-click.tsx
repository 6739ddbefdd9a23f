/** Where the click falls in a section of a form: as one chooses while playing, or as the form says. */
import type { FormSection, Meter } from '@shedbook/core';
import { Select } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';

type Click = FormSection['click'];

const CHOICES = ['asked', 'all', 'backbeat', 'bar', 'none'] as const;
type Choice = (typeof CHOICES)[number];

/** The beats, from 1, that a choice means in a meter; undefined where the form is to say nothing. */
function beatsOf(choice: Choice, { beats }: Meter): Click {
  const all = beats.map((_, index) => index + 1);
  if (choice === 'all') return all;
  if (choice === 'backbeat') return all.filter((beat) => beat % 2 === 0);
  if (choice === 'bar') return [1];
  return choice === 'none' ? [] : undefined;
}

/** The choice. */
export function SectionClick(props: {
  readonly meter: Meter;
  readonly click: Click;
  readonly onChange: (click: Click) => void;
}) {
  const { meter, click, onChange } = props;
  const words = useWords().forms;
  const isSame = (choice: Choice) => String(beatsOf(choice, meter)) === String(click);
  const chosen = click === undefined ? 'asked' : click.length === 0 ? 'none' : CHOICES.find(isSame);
  return (
    <Select
      label={words.click}
      value={chosen ?? 'other'}
      onChange={(event) => {
        const next = CHOICES.find((each) => each === event.target.value);
        if (next) onChange(beatsOf(next, meter));
      }}
    >
      {[...CHOICES, ...(chosen ? [] : (['other'] as const))].map((each) => (
        <option key={each} value={each}>
          {words.clicks[each]}
        </option>
      ))}
    </Select>
  );
}
