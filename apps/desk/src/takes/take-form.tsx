/** A student's recording: what was to be played, what was, and whether it is kept. */
import {
  bringWithin,
  countedTempo,
  defaultForm,
  type Exercise,
  exerciseLabel,
  type FullReport,
  formsShown,
  type Lesson,
  PLAYED_TEMPI,
  quarterTempo,
  sectionOf,
} from '@shedbook/core';
import type { Judgement, Level } from '@shedbook/judge';
import { Button, Field, Icon, Select } from '@shedbook/stand';
import { nameIn, teacherSentences } from '@shedbook/words';
import { Suspense, useState } from 'react';
import { lazily } from '../loading/later.ts';
import rows from '../shared/making-rows.module.css';
import { useLanguage, useSay, useWords } from '../words/students-words.tsx';
import styles from './take-form.module.css';
import type { HeardTake } from './take-messages.ts';
import { type Hearing, useTake } from './use-take.ts';

const HeardReport = lazily(
  () => import('./heard-report.tsx'),
  (module) => module.HeardReport,
);

/** A lesson that something of was played. */
export interface PlayedLesson {
  readonly id: string;
  readonly lesson: Lesson;
  readonly text: string;
}

/** A recording that was heard, with what it is of. */
export interface HeardOf {
  readonly report: FullReport;
  readonly lesson: PlayedLesson;
  readonly exercise: Exercise;
  readonly form: string;
}

interface TakeFormProps {
  readonly file: File;
  readonly shelf: readonly PlayedLesson[];
  /** What was most likely played: a lesson's id and an exercise's number. */
  readonly likely: { readonly lesson: string; readonly exercise: number } | null;
  readonly level: Level;
  /** Whose it is. */
  readonly name: string;
  readonly onKeep: (heard: HeardOf) => void;
  readonly onClose: () => void;
}

/** How an exercise is called in a list. */
function called({ number, name }: Exercise): string {
  return name === null ? exerciseLabel(number) : `${exerciseLabel(number)} ${name}`;
}

/** Lesson and exercise; the lesson by itself where its groove alone was played. */
function titleOf(
  { title }: Lesson,
  exercise: Exercise | null,
  of: (what: { readonly lesson: string; readonly exercise: string }) => string,
): string {
  return exercise ? of({ lesson: title, exercise: called(exercise) }) : title;
}

interface Choice {
  readonly lesson: string | null;
  /** Null for whichever was played. */
  readonly exercise: number | null;
  readonly form: string | null;
  /** Quarter notes a minute, or null. */
  readonly bpm: number | null;
}

/**
 * What was chosen, while there is such a thing.
 * @param heard number of the exercise that was heard; null where none was yet
 */
function useChoice({ shelf, likely }: Pick<TakeFormProps, 'shelf' | 'likely'>, heard: number | null) {
  const [choice, setChoice] = useState<Choice>({
    lesson: likely?.lesson ?? null,
    exercise: likely?.exercise ?? null,
    ...{ form: null, bpm: null },
  });
  const played = shelf.find(({ id }) => id === choice.lesson) ?? shelf[0];
  const wanted = heard ?? choice.exercise;
  const exercise = played?.lesson.exercises.find(({ number }) => number === wanted) ?? null;
  const section = played && sectionOf(played.lesson, exercise?.number ?? null);
  const forms = section ? formsShown(section, exercise?.number ?? null) : [];
  const form = section && (forms.find(({ name }) => name === choice.form) ?? defaultForm(section)).name;
  return {
    choice,
    choose: (change: Partial<Choice>) => setChoice((before) => ({ ...before, ...change })),
    played,
    exercise,
    section,
    forms,
    form,
  };
}

function Said({ hearing }: { readonly hearing: Hearing }) {
  const words = useWords().takes;
  if (hearing.at === 'reading') return words.reading;
  if (hearing.at === 'failed' || hearing.at === 'untold') return words[hearing.at];
  if (hearing.at !== 'listening') return null;
  return (
    <>
      {hearing.share < 1 ? words.listening : words.measuring}
      <progress aria-label={words.listening} value={hearing.share < 1 ? hearing.share : undefined} max={1} />
    </>
  );
}

/** Why there is no report. */
function Unreported({ heard }: { readonly heard: HeardTake }) {
  const { language } = useLanguage();
  const say = useSay();
  return (
    <div>
      {teacherSentences(heard.judgement, language).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {heard.refusal && <p className="quiet">{say(heard.refusal)}</p>}
    </div>
  );
}

/** That nothing is wrong with it in another form, and a press that hears it so. */
function InOtherForm({ form, onHear }: { readonly form: string; readonly onHear: (form: string) => void }) {
  const words = useWords();
  const say = useSay();
  const name = nameIn(words.sound.forms, form);
  return (
    <p className={rows.acts}>
      {say({ fact: 'clean-in-form', form: name })}
      <Button onClick={() => onHear(form)}>{words.takes.hearAs({ form: name })}</Button>
    </p>
  );
}

/** That another exercise was played, and a press that hears it so. */
function AsOther({ exercise, onHear }: { readonly exercise: number; readonly onHear: (n: number) => void }) {
  const words = useWords().takes;
  return (
    <p className={rows.acts}>
      <Button onClick={() => onHear(exercise)}>{words.hearAsExercise({ n: exercise })}</Button>
    </p>
  );
}

/** The exercise that was played rather than the one that was chosen, or null. */
function otherIn({ verdict }: Judgement): number | null {
  return verdict.about.find(({ what }) => what === 'other-exercise')?.exercise ?? null;
}

/** The form. */
export function TakeForm(props: TakeFormProps) {
  const { file, shelf, level, name, onKeep, onClose } = props;
  const words = useWords();
  const { hearing, hear, cancel } = useTake();
  const say = useSay();
  const number = hearing.at === 'heard' ? hearing.heard.exercise : null;
  const { choice, choose: change, played, exercise, section, forms, form: first } = useChoice(props, number);
  const other = hearing.at === 'heard' ? otherIn(hearing.heard.judgement) : null;
  const isEmpty = played?.lesson.exercises.length === 0;
  if (!played || !section || first === undefined || isEmpty) return <p>{words.takes.nothingToPlay}</p>;
  const isBusy = hearing.at === 'reading' || hearing.at === 'listening';
  // what was heard is of what was chosen then
  const choose = (to: Partial<Choice>) => {
    if (!isBusy) cancel();
    change(to);
  };
  const order = {
    text: played.text,
    exercise: exercise?.number ?? null,
    form: choice.form,
    bpm: choice.bpm,
    level,
  };
  const form = hearing.at === 'heard' ? hearing.heard.form : first;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div
      className={styles.form}
      data-part="take-form"
      data-at={hearing.at}
      role="group"
      aria-label={words.takes.whatOf({ file: file.name })}
    >
      <p>{words.takes.whatOf({ file: file.name })}</p>
      <div className={styles.lists}>
        <Select
          label={words.students.lesson}
          value={played.id}
          onChange={({ target }) => choose({ lesson: target.value, exercise: null })}
        >
          {shelf.map((each) => (
            <option key={each.id} value={each.id}>
              {each.lesson.title}
            </option>
          ))}
        </Select>
        <Select
          label={words.students.exercise}
          value={exercise?.number ?? ''}
          onChange={({ target }) => choose({ exercise: target.value === '' ? null : Number(target.value) })}
        >
          <option value="">{words.takes.whichever}</option>
          {played.lesson.exercises.map((each) => (
            <option key={each.number} value={each.number}>
              {called(each)}
            </option>
          ))}
        </Select>
        <Select
          label={words.sound.form}
          value={form}
          onChange={({ target }) => choose({ form: target.value })}
        >
          {forms.map((each) => (
            <option key={each.name} value={each.name}>
              {nameIn(words.sound.forms, each.name)}
            </option>
          ))}
        </Select>
        <Field
          label={words.sound.tempo}
          type="number"
          inputMode="numeric"
          placeholder={words.takes.anyTempo({ bpm: countedTempo(section.meter, section.tempo.startBpm) })}
          onChange={({ target }) => {
            const bpm = quarterTempo(section.meter, target.valueAsNumber);
            choose({ bpm: Number.isFinite(bpm) ? bringWithin(PLAYED_TEMPI, bpm) : null });
          }}
        />
      </div>
      <div className={rows.acts}>
        <Button
          dress={hearing.at === 'heard' ? 'plain' : 'strong'}
          disabled={isBusy}
          onClick={() => void hear(file, order)}
        >
          <Icon name="play" />
          {words.takes.listen}
        </Button>
        {isBusy ? (
          <Button onClick={cancel}>{words.recordings.cancel}</Button>
        ) : (
          <Button onClick={onClose}>{words.takes.leave}</Button>
        )}
      </div>
      <div className={rows.said} role="status">
        <Said hearing={hearing} />
      </div>
      {hearing.at === 'heard' && !hearing.heard.report && <Unreported heard={hearing.heard} />}
      {hearing.at === 'heard' && hearing.heard.report && (
        <>
          {hearing.heard.told && <p>{say(hearing.heard.told)}</p>}
          {other !== null && (
            <AsOther
              exercise={other}
              onHear={(meant) => {
                choose({ exercise: meant });
                void hear(file, { ...order, exercise: meant });
              }}
            />
          )}
          {hearing.heard.cleanIn !== null && (
            <InOtherForm
              form={hearing.heard.cleanIn}
              onHear={(meant) => {
                choose({ form: meant });
                void hear(file, { ...order, form: meant });
              }}
            />
          )}
          <Suspense>
            <HeardReport
              report={hearing.heard.report}
              judgement={hearing.heard.judgement}
              title={titleOf(played.lesson, exercise, words.takes.title)}
            />
          </Suspense>
          {exercise && (
            <Button
              dress="strong"
              onClick={() =>
                hearing.heard.report &&
                onKeep({ report: hearing.heard.report, lesson: played, exercise, form })
              }
            >
              {words.takes.keep({ name })}
            </Button>
          )}
        </>
      )}
    </div>
  );
}
