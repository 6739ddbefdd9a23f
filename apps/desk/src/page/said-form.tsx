/** What an exercise says beside its notes: dynamics, texts over and under its bars, fills, whether it is shown, and who is silent. */

import {
  DYNAMIC_MARKS,
  EXAMPLE_TIMES,
  type Example,
  type Exercise,
  type Lesson,
  LIMBS,
  type Silent,
} from '@shedbook/core';
import { Check, Select } from '@shedbook/stand';
import { nameIn } from '@shedbook/words';
import type { Unnumbered } from '../edit/exercises.ts';
import {
  fillFrom,
  type Hairpin,
  signAt,
  withExample,
  withFill,
  withHow,
  withRests,
  withSign,
  withText,
} from '../edit/said.ts';
import type { SlotPlace } from '../edit/strokes.ts';
import { Stepper } from '../form/stepper.tsx';
import { HowChoice } from '../shared/how-choice.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { useWords } from '../words/words.tsx';
import styles from './said-form.module.css';

/** What they are given. */
export interface SaidToolsProps {
  readonly lesson: Lesson;
  readonly exercise: Exercise;
  readonly place: SlotPlace;
  readonly onChange: (exercise: Unnumbered) => void;
}

const HAIRPINS: readonly (Hairpin | null)[] = [null, 'louder', 'softer', 'end'];

function Dynamics({ exercise, place, onChange }: Omit<SaidToolsProps, 'lesson'>) {
  const words = useWords().page;
  const sign = signAt(exercise, place);
  const hairpins = {
    none: words.hairpinNone,
    louder: words.hairpinLouder,
    softer: words.hairpinSofter,
    end: words.hairpinEnd,
  };
  return (
    <div className={styles.pair}>
      <Select
        label={words.dynamic}
        value={sign.mark ?? ''}
        onChange={({ target }) => {
          const mark = DYNAMIC_MARKS.find((each) => each === target.value) ?? null;
          onChange(withSign(exercise, place, { ...sign, mark }));
        }}
      >
        <option value="">{words.noDynamic}</option>
        {DYNAMIC_MARKS.map((mark) => (
          <option key={mark}>{mark}</option>
        ))}
      </Select>
      <Select
        label={words.hairpin}
        value={sign.hairpin ?? 'none'}
        onChange={({ target }) => {
          const hairpin = HAIRPINS.find((each) => each === target.value) ?? null;
          onChange(withSign(exercise, place, { ...sign, hairpin }));
        }}
      >
        {HAIRPINS.map((hairpin) => (
          <option key={hairpin ?? 'none'} value={hairpin ?? 'none'}>
            {hairpins[hairpin ?? 'none']}
          </option>
        ))}
      </Select>
    </div>
  );
}

interface SilentChoiceProps {
  readonly legend: string;
  readonly lesson: Lesson;
  readonly silent: readonly Silent[];
  readonly onSilent: (silent: readonly Silent[]) => void;
}

/** Limbs, and voices of the groove, each silent or not. */
function SilentChoice({ legend, lesson, silent, onSilent }: SilentChoiceProps) {
  const words = useWords();
  const voices = lesson.groove.map((part) => part.voice);
  const all: readonly (readonly [Silent, string])[] = [
    ...LIMBS.map((limb) => [limb, words.limbs[limb]] as const),
    ...voices.map((voice) => [voice, words.voices[voice]] as const),
  ];
  return (
    <fieldset>
      <legend>{legend}</legend>
      {all.map(([each, said]) => (
        <Check
          key={each}
          checked={silent.includes(each)}
          onChange={(on) => onSilent(on ? [...silent, each] : silent.filter((other) => other !== each))}
        >
          {said}
        </Check>
      ))}
    </fieldset>
  );
}

/** Whether it is shown before it is played, and how. */
function ExampleChoice({ lesson, exercise, onChange }: Omit<SaidToolsProps, 'place'>) {
  const words = useWords();
  const { example } = exercise;
  const change = (next: Example | null) => onChange(withExample(exercise, next));
  return (
    <>
      <Check
        checked={example !== undefined}
        onChange={(on) => change(on ? { times: EXAMPLE_TIMES.usual, form: null } : null)}
      >
        {words.page.example}
      </Check>
      {example && (
        <div className={styles.pair} data-part="example">
          <Stepper
            label={words.page.exampleTimes}
            value={example.times}
            least={1}
            most={EXAMPLE_TIMES.most}
            onChange={(times) => change({ ...example, times })}
          />
          <Select
            label={words.page.exampleForm}
            value={example.form ?? ''}
            onChange={({ target }) => change({ ...example, form: target.value || null })}
          >
            <option value="">{words.page.examplePhrase}</option>
            {lesson.forms.map(({ name }) => (
              <option key={name} value={name}>
                {nameIn(words.sound.forms, name)}
              </option>
            ))}
          </Select>
        </div>
      )}
    </>
  );
}

/** The controls. */
export function SaidForm({ lesson, exercise, place, onChange }: SaidToolsProps) {
  const words = useWords().page;
  const fill = fillFrom(exercise, place);
  const textAt = (texts: Exercise['above']) => texts?.[place.bar] ?? '';
  return (
    <div className={styles.form}>
      <Dynamics exercise={exercise} place={place} onChange={onChange} />
      {(['above', 'below'] as const).map((where) => (
        <KeptField
          key={`${where} ${place.bar}`}
          label={words[where]}
          value={textAt(exercise[where])}
          onKeep={(text) => onChange(withText(exercise, where, place.bar, text))}
        />
      ))}
      {exercise.parts.map(({ voice }) => (
        <HowChoice
          key={voice}
          legend={words.how({ voice })}
          voice={voice}
          how={exercise.how?.[voice] ?? []}
          onHow={(how) => onChange(withHow(exercise, voice, how))}
        />
      ))}
      <Check checked={fill} onChange={(on) => onChange(withFill(exercise, on ? place : null, null))}>
        {words.fill}
      </Check>
      {exercise.fill && (
        <SilentChoice
          legend={words.fillSilences}
          lesson={lesson}
          silent={exercise.fill.silences ?? []}
          onSilent={(silent) =>
            onChange(withFill(exercise, exercise.fill ?? null, silent.length > 0 ? silent : null))
          }
        />
      )}
      <ExampleChoice lesson={lesson} exercise={exercise} onChange={onChange} />
      <SilentChoice
        legend={words.rests}
        lesson={lesson}
        silent={exercise.rests ?? []}
        onSilent={(silent) => onChange(withRests(exercise, silent))}
      />
    </div>
  );
}
