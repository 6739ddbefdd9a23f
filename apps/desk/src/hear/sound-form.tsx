/** More about the sound: exercise or time alone, form, feel, layers, and the balance of every voice. */

import { formsShown, type Lesson, readFeel, type Voice } from '@shedbook/core';
import { Check, Choices, Range } from '@shedbook/stand';
import { nameIn } from '@shedbook/words';
import { useDocumentState } from '../document/use-document.ts';
import { ownForms } from '../edit/forms.ts';
import { useWords } from '../words/words.tsx';
import { ClickForm } from './click-form.tsx';
import { type Heard, insteadOf, upToLayer } from './heard.ts';
import { useSound } from './sound-context.tsx';
import styles from './sound-form.module.css';

function ratioOf(feel: string): number {
  const read = readFeel(feel);
  return read?.kind === 'ratio' ? read.ratio : 1;
}

function voicesOf(lesson: Lesson): readonly Voice[] {
  return [...new Set([...lesson.groove.map((part) => part.voice), lesson.comping])];
}

function FeelRange({ heard }: { readonly heard: Heard }) {
  const words = useWords();
  const { choose } = useSound();
  const ratio = ratioOf(heard.feel);
  return (
    <Range
      label={words.sound.swing}
      says={ratio === 1 ? words.heading.feels.even : `${ratio.toFixed(1)}:1`}
      value={ratio}
      min={1}
      max={3.5}
      step={0.1}
      onChange={(next) => choose(insteadOf(heard, { feel: next === 1 ? 'even' : `${next.toFixed(1)}:1` }))}
    />
  );
}

function Voices({ lesson }: { readonly lesson: Lesson }) {
  const words = useWords();
  const { choice, choose } = useSound();
  return (
    <div className={styles.voices}>
      {voicesOf(lesson).map((voice) => {
        const muted = choice.mute.includes(voice);
        const trim = choice.trimDb[voice] ?? 0;
        return (
          <div key={voice}>
            <Range
              label={words.voices[voice]}
              says={words.groove.db({ db: lesson.balance[voice] + trim })}
              value={trim}
              min={-18}
              max={18}
              step={1}
              onChange={(db) => choose({ trimDb: { ...choice.trimDb, [voice]: db } })}
            />
            <Check
              checked={muted}
              onChange={(on) =>
                choose({ mute: on ? [...choice.mute, voice] : choice.mute.filter((each) => each !== voice) })
              }
            >
              {words.sound.mute({ voice })}
            </Check>
          </div>
        );
      })}
    </div>
  );
}

/** The form. */
export function SoundForm({ lesson, heard }: { readonly lesson: Lesson; readonly heard: Heard }) {
  const words = useWords();
  const { choose, side, compare } = useSound();
  const { section } = heard;
  const own = ownForms(useDocumentState().text);
  const number = heard.exercise === null ? 'time' : 'exercise';
  const shown = heard.exercise ?? lesson.exercises[0]?.number ?? 1;
  return (
    <div className={styles.form}>
      <Choices
        label={words.sound.what}
        value={number}
        choices={[
          ['exercise', words.sound.exercise({ n: shown })],
          ['time', words.sound.timeOnly],
        ]}
        onChange={(next) => choose({ exercise: next === 'time' ? null : shown })}
      />
      <Choices
        label={words.sound.form}
        value={heard.form.name}
        choices={formsShown(section, heard.exercise).map((form) => {
          const name = nameIn(words.sound.forms, form.name);
          return [form.name, own.includes(form.name) ? words.sound.ownForm({ name }) : name] as const;
        })}
        onChange={(form) => choose({ form })}
      />
      <ClickForm />
      <FeelRange heard={heard} />
      <Choices
        label={words.sound.side}
        value={side}
        choices={[
          ['A', 'A'],
          ['B', 'B'],
        ]}
        onChange={(next) => next !== side && compare()}
      />
      <Choices
        label={words.sound.layers}
        value={String(heard.layers)}
        choices={section.layers.map((layer, index) => {
          const all = index === section.layers.length - 1;
          const joins = layer.joins.map((join) =>
            join === 'pattern' ? words.page.pattern : words.voices[join],
          );
          return [String(index + 1), all ? words.sound.all : `+ ${joins.join(', ')}`] as const;
        })}
        onChange={(layers) => choose({ upTo: upToLayer(section.layers, Number(layers)) })}
      />
      <Voices lesson={section} />
    </div>
  );
}
