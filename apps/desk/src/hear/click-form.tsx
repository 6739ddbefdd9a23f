/** Where the click falls: on every beat or on 2 and 4, what is marked inside the beat, when it drops out, the count-in. */
import { SUBDIVISIONS } from '@shedbook/core';
import { Check, Choices, Select } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';
import styles from './click-form.module.css';
import type { ClickChoice } from './sound-choice.ts';
import { useSound } from './sound-context.tsx';

/** Bars with the click and bars without. */
const GAPS = ['1/1', '2/2', '3/1', '4/4'] as const;

/** Most bars of count-in that a form may have. */
const MOST_COUNT_IN = 4;

function gapOf(text: string): ClickChoice['gap'] {
  const [soundingBars, silentBars] = text.split('/').map(Number);
  return soundingBars && silentBars ? { soundingBars, silentBars } : null;
}

/** The choices; what is chosen is heard at once, so the click comes on with it. */
export function ClickForm() {
  const words = useWords().sound;
  const { choice, choose } = useSound();
  const { beats, subdivision, gap, isSpoken, countInBars } = choice.clicks;
  const set = (change: Partial<ClickChoice>) =>
    choose({ click: true, clicks: { ...choice.clicks, ...change } });
  return (
    <fieldset className={styles.clicks} data-part="click-form">
      <legend className="hidden-words">{words.click}</legend>
      <Choices<'off' | ClickChoice['beats']>
        label={words.click}
        value={choice.click ? beats : 'off'}
        choices={[
          ['off', words.noClick],
          ['all', words.everyBeat],
          ['second', words.secondBeats],
        ]}
        onChange={(next) => (next === 'off' ? choose({ click: false }) : set({ beats: next }))}
      />
      <Check checked={choice.click && isSpoken} onChange={(next) => set({ isSpoken: next })}>
        {words.countAloud}
      </Check>
      <div className={styles.lists}>
        <Select
          label={words.insideBeat}
          value={String(subdivision)}
          onChange={(event) =>
            set({ subdivision: SUBDIVISIONS.find((each) => String(each) === event.target.value) ?? 1 })
          }
        >
          {SUBDIVISIONS.map((each) => (
            <option key={each} value={each}>
              {each === 1 ? words.nothingInside : words.inBeat({ n: each })}
            </option>
          ))}
        </Select>
        <Select
          label={words.gap}
          value={gap ? `${gap.soundingBars}/${gap.silentBars}` : ''}
          onChange={(event) => set({ gap: gapOf(event.target.value) })}
        >
          <option value="">{words.noGap}</option>
          {GAPS.map((each) => {
            const [on, off] = each.split('/').map(Number);
            return (
              <option key={each} value={each}>
                {words.gapOf({ on: on ?? 0, off: off ?? 0 })}
              </option>
            );
          })}
        </Select>
        <Select
          label={words.countIn}
          value={countInBars === null ? '' : String(countInBars)}
          onChange={({ target }) =>
            choose({
              clicks: { ...choice.clicks, countInBars: target.value === '' ? null : Number(target.value) },
            })
          }
        >
          <option value="">{words.countInOfForm}</option>
          {Array.from({ length: MOST_COUNT_IN + 1 }, (_, bars) => (
            <option key={bars} value={bars}>
              {words.countInBars({ n: bars })}
            </option>
          ))}
        </Select>
      </div>
    </fieldset>
  );
}
