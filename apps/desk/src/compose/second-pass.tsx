/** A second pass over the chosen exercise, or over all of them: what is made is proposed. */
import {
  ACCENT_RULES,
  answeringVoices,
  HANDS_RULES,
  KIT_RULES,
  type Pass,
  SHARING_RULES,
} from '@shedbook/composer';
import type { Lesson, Voice } from '@shedbook/core';
import { Button, Choices } from '@shedbook/stand';
import { useState } from 'react';
import { useSay, useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { Composer } from './use-composer.ts';

interface SecondPassProps {
  readonly lesson: Lesson;
  readonly composer: Composer;
  /** Number of the exercise that is chosen. */
  readonly chosen: number;
}

const PASSES = ['share', 'kit', 'accents', 'hands', 'fill'] as const;
type PassName = (typeof PASSES)[number];

/** Every pass by the rule that makes it. */
const RULES = {
  share: SHARING_RULES,
  kit: KIT_RULES,
  accents: ACCENT_RULES,
  hands: HANDS_RULES,
  fill: ['one-beat', 'two-beats'],
} as const satisfies Readonly<Record<PassName, readonly string[]>>;

/** What a fill of so many beats is called. */
const FILLS = { 1: 'one-beat', 2: 'two-beats' } as const;

/** Bars of a phrase that ends in a fill. */
const PHRASE_BARS = [2, 4, 8] as const;

/** What a pass goes by beside its rule. */
interface Beside {
  /** The voice that takes what is shared out. */
  readonly lower: Voice;
  /** Bars of the phrase that ends in a fill. */
  readonly bars: number;
}

/** A choice for each pass, so that coming back to one finds it as it was left. */
type Chosen = { readonly [P in PassName]: (typeof RULES)[P][number] };

const FIRST: Chosen = {
  share: 'long-below',
  kit: 'by-beat',
  accents: 'first-of-group',
  hands: 'by-turns',
  fill: 'two-beats',
};

function passOf(name: PassName, chosen: Chosen, { lower, bars }: Beside): Pass {
  switch (name) {
    case 'share':
      return { pass: name, rule: chosen.share, lower };
    case 'kit':
      return { pass: name, rule: chosen.kit };
    case 'accents':
      return { pass: name, rule: chosen.accents };
    case 'hands':
      return { pass: name, rule: chosen.hands };
    case 'fill':
      return { pass: name, beats: chosen.fill === 'one-beat' ? 1 : 2, bars };
  }
}

/** The pass, its rule and what it is made of. */
export function SecondPass({ lesson, composer, chosen }: SecondPassProps) {
  const words = useWords();
  const say = useSay();
  const said = words.compose;
  const [name, setName] = useState<PassName>('share');
  const [rules, setRules] = useState(FIRST);
  const [beside, setBeside] = useState<Beside>({ lower: 'bass', bars: 4 });
  const lowers = answeringVoices(lesson);
  const lower = lowers.includes(beside.lower) ? beside.lower : (lowers[0] ?? beside.lower);
  const [over, setOver] = useState<'one' | 'all'>('one');
  const [earlier, setEarlier] = useState<readonly Pass[]>([]);
  const pass = passOf(name, rules, { ...beside, lower });
  const seed = composer.ask?.ask === 'passes' ? composer.ask.seed + 1 : 1;
  const exercises = over === 'all' ? lesson.exercises.map(({ number }) => number) : [chosen];
  const ruleNames: Readonly<Record<string, string>> = said.rules[name];
  const nameOf = (made: Pass) => {
    const names: Readonly<Record<string, string>> = said.rules[made.pass];
    const rule = made.pass === 'fill' ? FILLS[made.beats] : made.rule;
    return `${say({ fact: `of-${made.pass}` })} (${names[rule] ?? rule})`;
  };
  return (
    <details className={styles.second} data-part="second-pass">
      <summary>{said.second}</summary>
      <div className={styles.opened}>
        <p>{said.secondLead}</p>
        {earlier.length > 0 && (
          <p>
            {said.earlier({ passes: earlier.map(nameOf).join(', ') })}{' '}
            <Button dress="bare" onClick={() => setEarlier([])}>
              {said.withoutEarlier}
            </Button>
          </p>
        )}
        <Choices
          label={said.pass}
          value={name}
          choices={PASSES.map((each) => [each, say({ fact: `of-${each}` })] as const)}
          onChange={setName}
        />
        <Choices
          label={said.rule}
          value={rules[name] as string}
          choices={RULES[name].map((rule) => [rule as string, ruleNames[rule] ?? rule] as const)}
          onChange={(rule) => setRules({ ...rules, [name]: rule })}
        />
        {name === 'share' && (
          <Choices<Voice>
            label={said.lower}
            value={lower}
            choices={lowers.map((voice) => [voice, words.voices[voice]] as const)}
            onChange={(voice) => setBeside({ ...beside, lower: voice })}
          />
        )}
        {name === 'fill' && (
          <Choices
            label={said.phraseBars}
            value={String(beside.bars)}
            choices={PHRASE_BARS.map((bars) => [String(bars), String(bars)] as const)}
            onChange={(bars) => setBeside({ ...beside, bars: Number(bars) })}
          />
        )}
        <Choices
          label={said.over}
          value={over}
          choices={[
            ['one', words.page.exercise({ n: chosen })],
            ['all', said.all],
          ]}
          onChange={setOver}
        />
        <Button onClick={() => setEarlier([...earlier, pass])}>{said.thenAnother}</Button>
        <Button
          onClick={() =>
            composer.propose({
              ask: 'passes',
              passes: [...earlier, pass],
              exercises,
              seed,
            })
          }
        >
          {said.proposePass}
        </Button>
      </div>
    </details>
  );
}
