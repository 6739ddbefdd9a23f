/** What stands over a section: its heading and what there is to say, written where they stand, and what is its own. */

import { canBePrepared, countedTempo, type Lesson, type Medium, noteSign, tempoBeat } from '@shedbook/core';
import { Icon, useSay } from '@shedbook/stand';
import { Suspense } from 'react';
import { useDocument, useDocumentState } from '../document/use-document.ts';
import { setMedia } from '../edit/media.ts';
import { setPlayed } from '../edit/played.ts';
import { moveSection, removeSection, saysItself, setSection } from '../edit/sections.ts';
import { lazily } from '../loading/later.ts';
import { PickMenu, PopForm } from '../shared/pop-over.tsx';
import { useWords } from '../words/words.tsx';
import { feelWords } from './feel-words.ts';
import { MediaChoice } from './media-choice.tsx';
import { PlainField, PlainText } from './plain-field.tsx';
import { usePreparing } from './prepare.ts';
import styles from './section-head.module.css';
import { useAddMedia } from './use-add-media.ts';

const MeasureForm = lazily(
  () => import('./measure-form.tsx'),
  (module) => module.MeasureForm,
);

interface SectionHeadProps {
  readonly section: Lesson;
  /** Number of the section among all, from 0. */
  readonly index: number;
  /** How many there are. */
  readonly all: number;
}

type SectionAction = 'up' | 'down' | 'as lesson' | 'prepare' | 'remove';

/** What can be done with a section as a whole. */
function useSectionActions(index: number) {
  const document = useDocument();
  const words = useWords();
  const say = useSay();
  const prepare = usePreparing();
  const { lesson } = useDocumentState();
  const edit = (change: (text: string) => string) => document.edit(change(document.state().text));
  const takeAgain = (text: string) =>
    saysItself(text, index).reduce((before, key) => setPlayed(before, index, key, undefined), text);
  const actions: Readonly<Record<SectionAction, () => void>> = {
    up: () => edit((text) => moveSection(text, index, -1)),
    down: () => edit((text) => moveSection(text, index, 1)),
    'as lesson': () => edit(takeAgain),
    prepare: () => {
      if (lesson) void prepare(lesson, index);
    },
    remove: () => {
      edit((text) => removeSection(text, index));
      say(words.page.removedSection, { label: words.desk.undo, run: () => void document.undo() });
    },
  };
  return { actions, edit };
}

/** The head. */
export function SectionHead({ section, index, all }: SectionHeadProps) {
  const allWords = useWords();
  const words = allWords.page;
  const { text } = useDocumentState();
  const { actions, edit } = useSectionActions(index);
  const keepMedia = (media: readonly Medium[]) => edit((before) => setMedia(before, index, media));
  const { drop } = useAddMedia(section.media, keepMedia);
  const { meter, tempo } = section;
  const feel = feelWords(section, allWords);
  const counted = (bpm: number) => countedTempo(meter, bpm);
  const offered: readonly (readonly [SectionAction, string, boolean])[] = [
    ['up', words.sectionUp, index > 0],
    ['down', words.sectionDown, index < all - 1],
    ['prepare', words.prepare, canBePrepared(section)],
    ['as lesson', words.sectionTakeAgain, saysItself(text, index).length > 0],
    ['remove', words.sectionRemove, true],
  ];
  return (
    <header className={styles.head} data-section={index} {...drop}>
      <div className={styles.line}>
        <PlainField
          className={styles.heading}
          label={words.sectionHeading({ n: index + 1 })}
          placeholder={words.sectionNumber({ n: index + 1 })}
          value={section.heading ?? ''}
          onKeep={(heading) => edit((before) => setSection(before, index, 'heading', heading))}
        />
        <PopForm
          label={words.sectionMeasure}
          className={styles.measure ?? ''}
          placement="bottom end"
          opens={
            <>
              <span className="hidden-words">{words.sectionMeasure}: </span>
              <span>{meter.text}</span>
              {feel && <span>{feel}</span>}
              <span>
                {noteSign(tempoBeat(meter))} ={' '}
                {allWords.heading.tempi({ from: counted(tempo.startBpm), to: counted(tempo.goalBpm) })}
              </span>
            </>
          }
        >
          <Suspense>
            <MeasureForm lesson={section} section={index} />
          </Suspense>
        </PopForm>
        <PickMenu<SectionAction>
          label={words.sectionMore({ n: index + 1 })}
          opens={<Icon name="more" />}
          dress="bare"
          placement="bottom end"
          items={offered.flatMap(([action, said, isOn]) => (isOn ? [[action, said] as const] : []))}
          onPick={(action) => actions[action]()}
        />
      </div>
      {section.before !== undefined && (
        <p className={styles.before} data-part="before">
          {words.before({ heading: section.before })}
        </p>
      )}
      <PlainText
        label={words.sectionText}
        value={section.text ?? ''}
        onKeep={(said) => edit((before) => setSection(before, index, 'text', said))}
      />
      <MediaChoice media={section.media} onMedia={keepMedia} />
    </header>
  );
}
