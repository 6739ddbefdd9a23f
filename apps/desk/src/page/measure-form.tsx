/**
 * Meter, feel, tempo and what the hands hold, of a lesson or of one of its sections. What is not one is said beside its field and not kept;
 * what a change would do to what is written is told before it is made.
 */

import {
  BEATERS,
  type ChangeFact,
  changeLesson,
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
import { useState } from 'react';
import { useNamesInUse } from '../document/names-in-use.ts';
import { useDocument } from '../document/use-document.ts';
import { setPlayed } from '../edit/played.ts';
import { useDraft } from '../shared/use-draft.ts';
import { useSay, useWords } from '../words/words.tsx';
import { BeforeChoice } from './before-choice.tsx';
import { ChangePanel, type Proposed } from './change-panel.tsx';
import styles from './measure-form.module.css';

/** Meters that are offered by a press. Source: common practice, the most usual first. */
const METERS = ['4/4', '3/4', '6/8', '12/8', '5/4', '7/8'] as const;

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
      problemRole="alert"
      problem={isRight(field.value) ? null : words.found({ found: `"${field.value}"`, expected })}
    />
  );
}

/** Changes of meter and feel: made at once where nothing is lost, else told first. */
function useChanges(section: number | null) {
  const document = useDocument();
  const inUse = useNamesInUse(document.id).exercises;
  const words = useWords().heading;
  const [proposed, setProposed] = useState<Proposed | null>(null);
  const changed = (change: { readonly meter?: string; readonly feel?: string; readonly inTwo?: boolean }) =>
    changeLesson(document.state().text, { section, inUse, ...change });
  const toMeter = (meter: string) => {
    const { text, tells } = changed({ meter });
    if (tells.length === 0) document.edit(text);
    else setProposed({ tells, ways: [{ label: words.change, run: () => document.edit(text) }] });
  };
  const toFeel = (feel: string) => {
    const plain = changed({ feel });
    const inTwo = isOfEvens(feel) ? changed({ feel, inTwo: true }) : plain;
    const rewrites = inTwo.tells.some((tell: ChangeFact) => tell.fact === 'beats-in-two');
    if (!rewrites) return document.edit(plain.text);
    setProposed({
      tells: inTwo.tells,
      ways: [
        { label: words.rewrite, run: () => document.edit(inTwo.text) },
        { label: words.onlyFeel, run: () => document.edit(plain.text) },
      ],
    });
  };
  return { proposed, put: setProposed, toMeter, toFeel };
}

/** Whether eighths and sixteenths are written in two: then beats in three sound as triplets. */
function isOfEvens(feel: string): boolean {
  const read = readFeel(feel);
  return read?.kind === 'even' || (read?.kind === 'ratio' && read.of === 'sixteenths');
}

interface MeasureFormProps {
  readonly lesson: Lesson;
  /** Number of the section among all, from 0; null for the lesson itself. */
  readonly section: number | null;
}

function MeterChoice({
  lesson,
  onMeter,
}: {
  readonly lesson: Lesson;
  readonly onMeter: (meter: string) => void;
}) {
  const words = useWords().heading;
  const say = useSay();
  const { text } = lesson.meter;
  const offered = (METERS as readonly string[]).includes(text) ? METERS : [...METERS, text];
  return (
    <>
      <Choices
        label={words.meter}
        value={text}
        choices={offered.map((meter) => [meter, meter] as const)}
        onChange={onMeter}
      />
      <CheckedField
        label={words.otherMeter}
        value={text}
        expected={say({ fact: 'a-meter' })}
        isRight={(each) => parseMeter(each) !== null}
        onKeep={onMeter}
      />
    </>
  );
}

function Tempi({ lesson, section }: MeasureFormProps) {
  const document = useDocument();
  const words = useWords().heading;
  const { meter } = lesson;
  const { startBpm, goalBpm, stepBpm } = lesson.tempo;
  const counted = (bpm: number) => countedTempo(meter, bpm);
  const quarters = (beats: string) => quarterTempo(meter, Number(beats));
  const isTempo = (beats: string) => beats.trim() !== '' && isWithin(LESSON_TEMPI, quarters(beats));
  const set = (start: number, goal: number, step: number) =>
    document.edit(setPlayed(document.state().text, section, 'tempo', { start, goal, step }));
  const range = `${counted(LESSON_TEMPI.least)}–${counted(LESSON_TEMPI.most)}`;
  const isGoal = (beats: string) => isTempo(beats) && quarters(beats) >= startBpm;
  return (
    <div className={styles.tempi}>
      <CheckedField
        label={words.start}
        value={String(counted(startBpm))}
        expected={range}
        isRight={isTempo}
        onKeep={(text) => set(quarters(text), Math.max(goalBpm, quarters(text)), stepBpm)}
      />
      <CheckedField
        label={words.goal}
        value={String(counted(goalBpm))}
        expected={`${counted(startBpm)}–${counted(LESSON_TEMPI.most)}`}
        isRight={isGoal}
        onKeep={(text) => set(startBpm, quarters(text), stepBpm)}
      />
      <CheckedField
        label={words.step}
        value={String(counted(stepBpm))}
        expected={`${Math.max(1, counted(1))}–${counted(60)}`}
        isRight={(text) => quarters(text) >= 1 && quarters(text) <= 60}
        onKeep={(text) => set(startBpm, goalBpm, quarters(text))}
      />
    </div>
  );
}

/** The form. */
export function MeasureForm({ lesson, section }: MeasureFormProps) {
  const document = useDocument();
  const words = useWords().heading;
  const say = useSay();
  const { proposed, put, toMeter, toFeel } = useChanges(section);
  const feel = formatFeel(lesson.feel);
  const kind = isFeelName(feel) ? feel : 'ratio';
  if (proposed) return <ChangePanel proposed={proposed} onDone={() => put(null)} />;
  return (
    <div className={styles.form}>
      <MeterChoice lesson={lesson} onMeter={toMeter} />
      <Choices
        label={words.feel}
        value={kind}
        choices={[
          ...FEEL_NAMES.map((name) => [name, words.feels[name]] as const),
          ['ratio', words.feels.ratio],
        ]}
        onChange={(next) => toFeel(next === 'ratio' ? '1.8:1' : next)}
      />
      {kind === 'ratio' && (
        <CheckedField
          label={words.ratio}
          value={feel}
          expected={say({ fact: 'a-feel-in-range' })}
          isRight={(text) => readFeel(text) !== null}
          onKeep={toFeel}
        />
      )}
      <Choices
        label={words.playedWith}
        value={lesson.playedWith}
        choices={BEATERS.map((beater) => [beater, words.beaters[beater]] as const)}
        onChange={(beater) => document.edit(setPlayed(document.state().text, section, 'playedWith', beater))}
      />
      <Tempi lesson={lesson} section={section} />
      {section !== null && <BeforeChoice section={section} />}
    </div>
  );
}
