/** Recordings of exercises as files: which, in which form and layers, how fast, and in which format. */
import {
  bringWithin,
  countedTempo,
  type Lesson,
  PLAYED_TEMPI,
  quarterTempo,
  sectionOf,
} from '@shedbook/core';
import { AUDIO_FORMATS, type AudioFormat } from '@shedbook/pack';
import { Button, Check, Choices, Field, Icon, Select } from '@shedbook/stand';
import { nameIn } from '@shedbook/words';
import { useState } from 'react';
import { useDocument } from '../document/use-document.ts';
import rows from '../shared/making-rows.module.css';
import { useWords } from '../words/words.tsx';
import type { RecordOrder } from './recording-messages.ts';
import styles from './recordings.module.css';
import { type Making, useRecordings } from './use-recordings.ts';

type Asked = Omit<RecordOrder, 'text'>;

interface PartProps {
  readonly lesson: Lesson;
  readonly asked: Asked;
  readonly ask: (change: Partial<Asked>) => void;
}

function Which({ lesson, asked, ask }: PartProps) {
  const words = useWords();
  const [isAll, setAll] = useState(true);
  const all = lesson.exercises.map(({ number }) => number);
  return (
    <>
      <Choices<'all' | 'some'>
        label={words.recordings.which}
        value={isAll ? 'all' : 'some'}
        choices={[
          ['all', words.recordings.all({ n: all.length })],
          ['some', words.recordings.some],
        ]}
        onChange={(which) => {
          setAll(which === 'all');
          ask({ exercises: which === 'all' ? all : all.slice(0, 1) });
        }}
      />
      {!isAll && (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
        <div className={styles.numbers} role="group" aria-label={words.recordings.which}>
          {all.map((number) => (
            <Check
              key={number}
              checked={asked.exercises.includes(number)}
              onChange={(on) =>
                ask({ exercises: all.filter((n) => (n === number ? on : asked.exercises.includes(n))) })
              }
            >
              <span className="hidden-words">{words.page.exercise({ n: number })}</span>
              <span aria-hidden="true">{number}</span>
            </Check>
          ))}
        </div>
      )}
    </>
  );
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
      <Select
        label={words.sound.form}
        value={asked.form ?? ''}
        onChange={({ target }) => ask({ form: target.value || null })}
      >
        <option value="">{words.recordings.usualForm}</option>
        {lesson.forms.map(({ name }) => (
          <option key={name} value={name}>
            {nameIn(words.sound.forms, name)}
          </option>
        ))}
      </Select>
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
      <Field
        label={words.sound.tempo}
        type="number"
        inputMode="numeric"
        placeholder={words.recordings.startTempo({
          bpm: countedTempo(section.meter, section.tempo.startBpm),
        })}
        onChange={({ target }) => {
          const bpm = quarterTempo(section.meter, target.valueAsNumber);
          ask({ bpm: Number.isFinite(bpm) ? bringWithin(PLAYED_TEMPI, bpm) : null });
        }}
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
  const words = useWords();
  const document = useDocument();
  const { making, make, cancel } = useRecordings();
  const [asked, setAsked] = useState<Asked>(() => ({
    exercises: lesson.exercises.map(({ number }) => number),
    layers: [Math.max(1, ...lesson.exercises.map(({ number }) => sectionOf(lesson, number).layers.length))],
    ...{ format: 'mp3', form: null, bpm: null, click: false },
  }));
  const ask = (change: Partial<Asked>) => setAsked((before) => ({ ...before, ...change }));
  const part = { lesson, asked, ask };
  const isMaking = making.at === 'making';
  return (
    <div className={styles.form} data-part="recordings" data-at={making.at}>
      <Which {...part} />
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
      <div className={rows.acts}>
        <Button
          dress="strong"
          disabled={isMaking || asked.exercises.length === 0}
          onClick={() => make({ ...asked, text: document.state().text })}
        >
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
