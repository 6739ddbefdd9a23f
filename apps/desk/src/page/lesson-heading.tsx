/** The heading of the page: title and author are written where they stand; meter, feel and tempo in a small form. */

import { countedTempo, type Lesson, type Medium, noteSign, tempoBeat } from '@shedbook/core';
import { Suspense } from 'react';
import { useNamesInUse } from '../document/names-in-use.ts';
import { useDocument } from '../document/use-document.ts';
import { renamed, setBy } from '../edit/heading.ts';
import { setMedia } from '../edit/media.ts';
import { setPlayed } from '../edit/played.ts';
import { lazily } from '../loading/later.ts';
import { PopForm } from '../shared/pop-over.tsx';
import { useWords } from '../words/words.tsx';
import { feelWords } from './feel-words.ts';
import styles from './lesson-heading.module.css';
import { MediaChoice } from './media-choice.tsx';
import { PlainField, PlainText } from './plain-field.tsx';
import { useAddMedia } from './use-add-media.ts';

const MeasureForm = lazily(
  () => import('./measure-form.tsx'),
  (module) => module.MeasureForm,
);

/** The heading. */
export function LessonHeading({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const inUse = useNamesInUse(document.id);
  const words = useWords();
  const keepMedia = (media: readonly Medium[]) => document.edit(setMedia(document.state().text, null, media));
  const { drop } = useAddMedia(lesson.media, keepMedia);
  const { tempo, meter } = lesson;
  const feel = feelWords(lesson, words);
  const counted = (bpm: number) => countedTempo(meter, bpm);
  return (
    <header className={styles.heading} {...drop}>
      <PlainField
        className={styles.title}
        label={words.heading.title}
        value={lesson.title}
        onKeep={(title) => document.edit(renamed(document.state().text, title.trim() || lesson.title, inUse))}
      />
      <div className={styles.line}>
        <PlainField
          className={styles.by}
          label={words.heading.by}
          value={lesson.by ?? ''}
          onKeep={(by) => document.edit(setBy(document.state().text, by.trim()))}
        />
        <PopForm
          label={words.heading.edit}
          className={styles.measure ?? ''}
          placement="bottom end"
          opens={
            <>
              <span className="hidden-words">{words.heading.edit}: </span>
              <span className={styles.meter}>{meter.text}</span>
              {feel && <span>{feel}</span>}
              <span>
                {noteSign(tempoBeat(meter))} ={' '}
                {words.heading.tempi({ from: counted(tempo.startBpm), to: counted(tempo.goalBpm) })}
              </span>
            </>
          }
        >
          <Suspense>
            <MeasureForm lesson={lesson} section={null} />
          </Suspense>
        </PopForm>
      </div>
      <PlainText
        label={words.page.lessonText}
        value={lesson.text ?? ''}
        onKeep={(text) =>
          document.edit(setPlayed(document.state().text, null, 'text', text.trim() || undefined))
        }
      />
      <MediaChoice media={lesson.media} onMedia={keepMedia} />
    </header>
  );
}
