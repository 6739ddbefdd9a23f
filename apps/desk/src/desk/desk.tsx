/** The desk: every lesson as a sheet lying there. */

import { Icon } from '@shedbook/stand';
import { useRef, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { wordsFor } from '../document/error-words.ts';
import { type DeskLesson, useLessons } from '../document/use-lessons.ts';
import { AskText } from '../shared/ask-text.tsx';
import { Guide } from '../shared/guide.tsx';
import { Preferences } from '../shared/preferences.tsx';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import { type CardAction, LessonCard } from './lesson-card.tsx';
import { useDeskActions } from './use-desk-actions.ts';
import './desk.css';

const ACCEPTED = ['.yaml', '.yml', '.musicxml', '.xml', '.mxl', '.mid', '.midi'];

/** The first screen. */
export function Desk() {
  const words = useWords();
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
      <header className="desk-head">
        <div>
          <h1>{words.desk.title}</h1>
          <p>{words.desk.lead}</p>
        </div>
        <div className="desk-actions">
          <Button className="button" onPress={() => go({ at: 'students' })}>
            {words.students.title}
          </Button>
          <FileTrigger
            acceptedFileTypes={ACCEPTED}
            onSelect={(files) => {
              const file = files?.[0];
              if (file) void actions.bringIn(file);
            }}
          >
            <Button className="button" aria-description={words.desk.importHint}>
              <Icon name="file" />
              {words.desk.importFile}
            </Button>
          </FileTrigger>
          <Button className="button strong" onPress={() => void actions.start()}>
            <Icon name="plus" />
            {words.desk.newLesson}
          </Button>
        </div>
      </header>
      <main className="desk" id="main" ref={main} tabIndex={-1} aria-label={words.desk.title}>
        <Guide at={0} />
        {error && <p className="problem">{wordsFor(error, words)}</p>}
        {lessons?.length === 0 && <p className="desk-empty">{words.desk.empty}</p>}
        <ul className="desk-lessons">
          {lessons?.map((lesson) => (
            <LessonCard key={lesson.stored.id} lesson={lesson} onAction={(action) => act(lesson, action)} />
          ))}
        </ul>
      </main>
      <Preferences />
      {renaming && (
        <AskText
          title={words.desk.renameTitle}
          label={words.desk.name}
          initial={renaming.title ?? ''}
          onAnswer={(title) => void actions.rename(renaming, title)}
          onClose={() => setRenaming(null)}
        />
      )}
    </>
  );
}
