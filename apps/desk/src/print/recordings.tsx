/** Recordings of exercises as files: which, in which form and layers, how fast, and in which format. */
import { Bpm, type Lesson, sectionOf } from '@shedbook/core';
import { AUDIO_FORMATS, type AudioFormat } from '@shedbook/pack';
import { Button, Check, Choices, Icon, Select } from '@shedbook/stand';
import { useState } from 'react';
import { useDocument } from '../document/use-document.ts';
import rows from '../shared/making-rows.module.css';
import { useLanguage, useWords } from '../words/words.tsx';
import { FormChoice, TempoChoice } from './form-and-tempo.tsx';
import type { RecordOrder } from './recording-messages.ts';
import styles from './recordings.module.css';
import { type Making, useRecordings } from './use-recordings.ts';
import { WhichExercises } from './which-exercises.tsx';

type Asked = Omit<RecordOrder, 'text' | 'spoken'> & { readonly countAloud: boolean };

interface PartProps {
  readonly lesson: Lesson;
  readonly asked: Asked;
  readonly ask: (change: Partial<Asked>) => void;
}

/** What a choice of all stages is called in the list. */
const STAGES = 'stages';

function How({ lesson, asked, ask }: PartProps) {
  const words = useWords();
  const section = sectionOf(lesson, asked.exercises[0] ?? null);
  const { layers } = section;
  const upTo = (index: number) =>
    (layers[index]?.joins ?? [])
      .map((join) => (join === 'pattern' ? words.page.pattern : words.voices[join]))
      .join(', ');
  const counts = layers.map((_, index) => index + 1);
  return (
    <div className={styles.lists}>
      <FormChoice lesson={lesson} form={asked.form} onChange={(form) => ask({ form })} />
      <Select
        label={words.sound.layers}
        value={asked.layers.length > 1 ? STAGES : String(asked.layers[0])}
        onChange={({ target }) => ask({ layers: target.value === STAGES ? counts : [Number(target.value)] })}
      >
        {counts.map((count) => (
          <option key={count} value={count}>
            {count === layers.length ? words.sound.all : `+ ${upTo(count - 1)}`}
          </option>
        ))}
        {layers.length > 1 && <option value={STAGES}>{words.recordings.stages}</option>}
      </Select>
      <TempoChoice
        lesson={lesson}
        exercise={asked.exercises[0] ?? null}
        onChange={(bpm) => ask({ bpm: bpm === null ? null : Bpm(bpm) })}
      />
    </div>
  );
}

function Said({ making }: { readonly making: Making }) {
  const words = useWords().recordings;
  if (making.at === 'making') {
    return (
      <>
        {words.making({ n: Math.max(1, making.number), of: making.total })}
        <progress aria-label={words.title} value={Math.max(0, making.number - 1)} max={making.total} />
      </>
    );
  }
  if (making.at === 'made') return words.made({ name: making.name });
  return making.at === 'ready' ? null : words[making.at];
}

/** The form. */
export function RecordingsForm({ lesson }: { readonly lesson: Lesson }) {
  const { tag, words } = useLanguage();
  const document = useDocument();
  const { making, make, cancel } = useRecordings();
  const [asked, setAsked] = useState<Asked>(() => ({
    exercises: lesson.exercises.map(({ number }) => number),
    layers: [Math.max(1, ...lesson.exercises.map(({ number }) => sectionOf(lesson, number).layers.length))],
    ...{ format: 'mp3', form: null, bpm: null, click: false, countAloud: false },
  }));
  const ask = (change: Partial<Asked>) => setAsked((before) => ({ ...before, ...change }));
  const part = { lesson, asked, ask };
  const isMaking = making.at === 'making';
  const order = () => {
    const { countAloud, ...rest } = asked;
    const language = rest.click && countAloud ? tag : null;
    make({ ...rest, text: document.state().text }, language);
  };
  return (
    <div className={styles.form} data-part="recordings" data-at={making.at}>
      <WhichExercises lesson={lesson} chosen={asked.exercises} onChange={(exercises) => ask({ exercises })} />
      <How {...part} />
      <Choices<AudioFormat>
        label={words.recordings.format}
        value={asked.format}
        choices={AUDIO_FORMATS.map((format) => [format, words.recordings.formats[format]] as const)}
        onChange={(format) => ask({ format })}
      />
      <Check checked={asked.click} onChange={(click) => ask({ click })}>
        {words.sound.click}
      </Check>
      <Check
        checked={asked.click && asked.countAloud}
        onChange={(countAloud) => ask(countAloud ? { countAloud, click: true } : { countAloud })}
      >
        {words.sound.countAloud}
      </Check>
      <div className={rows.acts}>
        <Button dress="strong" disabled={isMaking || asked.exercises.length === 0} onClick={order}>
          <Icon name="file" />
          {words.recordings.make({ n: asked.exercises.length })}
        </Button>
        {isMaking && <Button onClick={cancel}>{words.recordings.cancel}</Button>}
      </div>
      <p className={rows.said} role="status">
        <Said making={making} />
      </p>
    </div>
  );
}
