/** The desk: every lesson as a sheet lying there. */

import { AskText, Button, FileButton, Icon, Preferences, Problem } from '@shedbook/stand';
import { LANGUAGES } from '@shedbook/words';
import { useRef, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { type DeskLesson, useLessons } from '../document/use-lessons.ts';
import { Guide } from '../shared/guide.tsx';
import { go } from '../shared/route.ts';
import { NothingYet, ScreenHead } from '../shared/screen-head.tsx';
import { useLanguage } from '../words/words.tsx';
import styles from './desk.module.css';
import { type CardAction, LessonCard } from './lesson-card.tsx';
import { useDeskActions } from './use-desk-actions.ts';

const ACCEPTED = ['.yaml', '.yml', '.musicxml', '.xml', '.mxl', '.mid', '.midi'];

/** The first screen. */
export function Desk() {
  const { tag, words, choose } = useLanguage();
  const { lessons, error, refresh } = useLessons();
  const actions = useDeskActions(refresh);
  const [renaming, setRenaming] = useState<DeskLesson | null>(null);
  const main = useRef<HTMLElement>(null);
  const act = (lesson: DeskLesson, action: CardAction) => {
    if (action === 'rename') setRenaming(lesson);
    else if (action === 'duplicate') void actions.duplicate(lesson);
    else if (action === 'remove') void actions.remove(lesson).then(() => main.current?.focus());
    else void actions.take(lesson, action);
  };
  return (
    <>
      <ScreenHead title={words.desk.title} lead={words.desk.lead}>
        <Button onClick={() => go({ at: 'students' })}>{words.students.title}</Button>
        <FileButton
          accept={ACCEPTED}
          onFile={(file) => void actions.bringIn(file)}
          aria-description={words.desk.importHint}
        >
          <Icon name="file" />
          {words.desk.importFile}
        </FileButton>
        <Button dress="strong" onClick={() => void actions.start()}>
          <Icon name="plus" />
          {words.desk.newLesson}
        </Button>
      </ScreenHead>
      <main className={styles.desk} id="main" ref={main} tabIndex={-1} aria-label={words.desk.title}>
        <Guide at={0} />
        {error && <Problem>{wordsFor(error, words)}</Problem>}
        {lessons?.length === 0 && <NothingYet>{words.desk.empty}</NothingYet>}
        <ul className={styles.lessons}>
          {lessons?.map((lesson) => (
            <LessonCard key={lesson.stored.id} lesson={lesson} onAction={(action) => act(lesson, action)} />
          ))}
        </ul>
      </main>
      <footer className={styles.preferences}>
        <Preferences
          language={tag}
          languages={Object.entries(LANGUAGES)}
          onLanguage={choose}
          words={words.settings}
        />
      </footer>
      {renaming && (
        <AskText
          title={words.desk.renameTitle}
          label={words.desk.name}
          initial={renaming.title ?? ''}
          done={words.heading.close}
          onAnswer={(title) => void actions.rename(renaming, title)}
          onClose={() => setRenaming(null)}
        />
      )}
    </>
  );
}
