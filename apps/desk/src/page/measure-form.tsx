/** Meter, feel and tempo. What is not one is said beside its field and not kept. */

import {
  countedTempo,
  FEEL_NAMES,
  formatFeel,
  isFeelName,
  isWithin,
  LESSON_TEMPI,
  type Lesson,
  parseMeter,
  quarterTempo,
  readFeel,
} from '@shedbook/core';
import { Choices, Field } from '@shedbook/stand';
import { useDocument } from '../document/use-document.ts';
import { setFeel, setMeter, setTempo } from '../edit/heading.ts';
import { useDraft } from '../shared/use-draft.ts';
import { useSay, useWords } from '../words/words.tsx';
import styles from './measure-form.module.css';

interface CheckedFieldProps {
  readonly label: string;
  readonly value: string;
  readonly expected: string;
  readonly isRight: (text: string) => boolean;
  readonly onKeep: (text: string) => void;
}

/** A field that keeps only what is right and says what it wants. */
function CheckedField({ label, value, expected, isRight, onKeep }: CheckedFieldProps) {
  const words = useWords().page;
  const { field } = useDraft(value, (text) => isRight(text) && onKeep(text));
  return (
    <Field
      {...field}
      label={label}
      problem={isRight(field.value) ? null : words.found({ found: `"${field.value}"`, expected })}
    />
  );
}

/** The form. */
export function MeasureForm({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const words = useWords().heading;
  const say = useSay();
  const edit = (change: (text: string) => string) => document.edit(change(document.state().text));
  const feel = formatFeel(lesson.feel);
  const kind = isFeelName(feel) ? feel : 'ratio';
  const { meter } = lesson;
  const { startBpm, goalBpm, stepBpm } = lesson.tempo;
  const counted = (bpm: number) => countedTempo(meter, bpm);
  const quarters = (beats: string) => quarterTempo(meter, Number(beats));
  const isTempo = (beats: string) => beats.trim() !== '' && isWithin(LESSON_TEMPI, quarters(beats));
  const range = `${counted(LESSON_TEMPI.least)}–${counted(LESSON_TEMPI.most)}`;
  return (
    <div className={styles.form}>
      <CheckedField
        label={words.meter}
        value={lesson.meter.text}
        expected={say({ fact: 'a-meter' })}
        isRight={(text) => parseMeter(text) !== null}
        onKeep={(text) => edit((before) => setMeter(before, text))}
      />
      <Choices
        label={words.feel}
        value={kind}
        choices={[
          ...FEEL_NAMES.map((name) => [name, words.feels[name]] as const),
          ['ratio', words.feels.ratio],
        ]}
        onChange={(next) => edit((before) => setFeel(before, next === 'ratio' ? '1.8:1' : next))}
      />
      {kind === 'ratio' && (
        <CheckedField
          label={words.ratio}
          value={feel}
          expected={say({ fact: 'a-feel-in-range' })}
          isRight={(text) => readFeel(text) !== null}
          onKeep={(text) => edit((before) => setFeel(before, text))}
        />
      )}
      <div className={styles.tempi}>
        <CheckedField
          label={words.start}
          value={String(counted(startBpm))}
          expected={range}
          isRight={isTempo}
          onKeep={(text) =>
            edit((before) => setTempo(before, quarters(text), Math.max(goalBpm, quarters(text)), stepBpm))
          }
        />
        <CheckedField
          label={words.goal}
          value={String(counted(goalBpm))}
          expected={range}
          isRight={isTempo}
          onKeep={(text) => edit((before) => setTempo(before, startBpm, quarters(text), stepBpm))}
        />
        <CheckedField
          label={words.step}
          value={String(counted(stepBpm))}
          expected="1–60"
          isRight={(text) => Number(text) >= 1 && Number(text) <= 60}
          onKeep={(text) => edit((before) => setTempo(before, startBpm, goalBpm, quarters(text)))}
        />
      </div>
    </div>
  );
}
