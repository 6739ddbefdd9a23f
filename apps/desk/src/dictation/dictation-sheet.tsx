/** Writing down what somebody plays: a take is dropped or recorded, and what of it is wanted goes on the page. */
import { formatFeel, type Lesson } from '@shedbook/core';
import type { Transcript } from '@shedbook/listen';
import { Button, Check, closeSheet, FileButton, Icon } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { useState } from 'react';
import type { Unnumbered } from '../edit/exercises.ts';
import { ExerciseRows } from '../notation/exercise-drawing.tsx';
import { useSayHeard } from '../words/late-words.ts';
import { useWords } from '../words/words.tsx';
import styles from './dictation-sheet.module.css';
import { type Keepable, keepablesOf, keptOf } from './heard-exercises.ts';
import { type Dictation, type DictationState, useDictation } from './use-dictation.ts';

/** Files that are offered. */
const ACCEPT = ['audio/*', '.wav', '.mp3', '.m4a', '.ogg', '.webm', '.mid', '.midi'] as const;
/** Bars that stand in one row. */
const ABREAST = 2;

interface DictationProps {
  readonly lesson: Lesson;
  readonly onKeep: (exercises: readonly Unnumbered[]) => void;
}

function Taking({ dictation }: { readonly dictation: Dictation }) {
  const words = useWords().dictation;
  const { state, record, stop, read } = dictation;
  if (state.at === 'recording')
    return (
      <Button dress="strong" onClick={() => void stop()}>
        {words.stop}
      </Button>
    );
  const isBusy = state.at === 'writing';
  return (
    <>
      <Button dress="strong" disabled={isBusy} onClick={() => void record('microphone')}>
        {words.record}
      </Button>
      <Button disabled={isBusy} onClick={() => void record('kit')}>
        {words.kit}
      </Button>
      <FileButton accept={ACCEPT} disabled={isBusy} onFile={(file) => void read(file)}>
        <Icon name="file" />
        {words.file}
      </FileButton>
    </>
  );
}

/** How far it is, in words. */
function Said({ state }: { readonly state: DictationState }) {
  const words = useWords().dictation;
  const say = useSayHeard();
  if (!say) return null;
  if (state.at === 'recording') return words.recording[state.source];
  if (state.at === 'writing') return words.writing;
  if (state.at === 'failed') return words.failed[state.why];
  if (state.at === 'refused') return say(state.refusal);
  if (state.at === 'ready') return null;
  const { bars, meter, bpm, feel, misfits } = state.heard;
  const found = words.found({
    ...{ bars: bars.length, meter: meter.text, bpm: Math.round(bpm), feel: formatFeel(feel) },
  });
  const left = misfits.length > 0 ? [words.misfits({ strokes: misfits.length })] : [];
  return [found, ...state.heard.remarks.map((fact) => say(fact)), ...left].join(' ');
}

interface HeardRowProps {
  readonly item: Keepable;
  readonly lesson: Lesson;
  readonly isKept: boolean;
  readonly onKeep: (on: boolean) => void;
}

function HeardRow({ item, lesson, isKept, onKeep }: HeardRowProps) {
  const words = useWords();
  const { exercise, lines, of } = item;
  const name = of === 'groove' ? words.dictation.groove : words.dictation.exercise({ n: exercise.number });
  return (
    <li>
      <Check checked={isKept} onChange={onKeep}>
        {name}
      </Check>
      <div role="img" aria-label={sayExercise(exercise, words)}>
        <ExerciseRows exercise={exercise} meter={lesson.meter} abreast={ABREAST} />
      </div>
      <dl className={styles.lines}>
        {lines.map(({ voice, text }) => (
          <div key={voice}>
            <dt>{words.voices[voice]}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </li>
  );
}

function Heard({ heard, lesson, onKeep }: DictationProps & { readonly heard: Transcript }) {
  const words = useWords().dictation;
  const all = keepablesOf(heard, lesson);
  const [kept, setKept] = useState(
    () => new Set(all.flatMap(({ isWanted }, index) => (isWanted ? [index] : []))),
  );
  const keep = (index: number, on: boolean) =>
    setKept((before) => new Set(on ? [...before, index] : [...before].filter((each) => each !== index)));
  return (
    <>
      <ol className={styles.heard} data-part="heard">
        {all.map((item, index) => (
          <HeardRow
            key={index}
            {...{ item, lesson }}
            isKept={kept.has(index)}
            onKeep={(on) => keep(index, on)}
          />
        ))}
      </ol>
      <Button
        dress="strong"
        disabled={kept.size === 0}
        onClick={(event) => {
          onKeep(keptOf(all, kept));
          closeSheet(event);
        }}
      >
        {words.keep({ n: kept.size })}
      </Button>
    </>
  );
}

/** What lies on the sheet. */
export function DictationSheet({ lesson, onKeep }: DictationProps) {
  const words = useWords().dictation;
  const dictation = useDictation(lesson);
  const { state } = dictation;
  return (
    <div className={styles.sheet} data-part="dictation" data-at={state.at}>
      <p>{words.lead({ meter: lesson.meter.text, feel: formatFeel(lesson.feel) })}</p>
      <div className={styles.row}>
        <Taking dictation={dictation} />
      </div>
      <p role="status">
        <Said state={state} />
      </p>
      {state.at === 'written' && <Heard {...{ lesson, onKeep }} heard={state.heard} />}
    </div>
  );
}
