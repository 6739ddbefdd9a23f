/** The desk: every lesson as a sheet lying there. */

import type { StarterName } from '@shedbook/core';
import type { DamagedLesson, LessonSummary } from '@shedbook/routes';
import { AskText, Button, FileButton, Icon, Preferences, Problem } from '@shedbook/stand';
import { LANGUAGES } from '@shedbook/words';
import { Suspense, startTransition, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { lazily } from '../loading/later.ts';
import { Guide } from '../shared/guide.tsx';
import { PickMenu } from '../shared/pop-over.tsx';
import { go } from '../shared/route.ts';
import { NothingYet, ScreenHead } from '../shared/screen-head.tsx';
import { SignOut } from '../sign-in/sign-out.tsx';
import { isTakeFile, letWait, useDropped } from '../takes/dropped.ts';
import { useLanguage } from '../words/words.tsx';
import styles from './desk.module.css';
import { findLessons } from './find-lessons.ts';
import { type CardAction, LessonCard } from './lesson-card.tsx';
import { ListBar, useSearch } from './list-bar.tsx';
import { useDeskActions } from './use-desk-actions.ts';
import { useShelf } from './use-shelf.ts';

const FilingSheet = lazily(
  () => import('./filing-sheet.tsx'),
  (module) => module.FilingSheet,
);
const DamagedLessons = lazily(
  () => import('./damaged-lessons.tsx'),
  (module) => module.DamagedLessons,
);

const ACCEPTED = ['.yaml', '.yml', '.musicxml', '.xml', '.mxl', '.mid', '.midi'];

/** Says when a lesson was changed: a day, and its year where that is another. */
function useChanged(): (lesson: LessonSummary) => string {
  const { tag, words } = useLanguage();
  return useMemo(() => {
    const thisYear = new Date().getFullYear();
    const day = new Intl.DateTimeFormat(tag, { day: 'numeric', month: 'short' });
    const dayAndYear = new Intl.DateTimeFormat(tag, { day: 'numeric', month: 'short', year: 'numeric' });
    return ({ updatedAt }) => {
      const date = new Date(updatedAt);
      const when = (date.getFullYear() === thisYear ? day : dayAndYear).format(date);
      return words.desk.changed({ when });
    };
  }, [tag, words]);
}

/** Lessons that cannot be read, once the others are there; none where nobody answers, which is told elsewhere. */
function useDamaged(isThere: boolean): readonly DamagedLesson[] {
  const [lessons, setLessons] = useState<readonly DamagedLesson[]>([]);
  useEffect(() => {
    if (isThere) ask('listDamaged', {}).then(setLessons, () => undefined);
  }, [isThere]);
  return lessons;
}

/** Lessons that fill any window. */
const FIRST = 40;

/** The first lessons at once, the others as soon as there is time. */
function useFirstThenAll<T>(all: readonly T[] | null): readonly T[] | null {
  const [isWhole, setWhole] = useState(false);
  const isThere = all !== null;
  useEffect(() => {
    if (isThere) startTransition(() => setWhole(true));
  }, [isThere]);
  return isWhole ? all : (all?.slice(0, FIRST) ?? null);
}

/** A function that stays the same while what it does may change, so that what has it is not drawn again. */
function useSteady<Args extends readonly unknown[]>(run: (...args: Args) => void): (...args: Args) => void {
  const latest = useRef(run);
  latest.current = run;
  return useCallback((...args: Args) => latest.current(...args), []);
}

/** The first screen. */
export function Desk() {
  const { tag, words, choose } = useLanguage();
  const { lessons, students, error, refresh } = useShelf();
  const damaged = useDamaged(lessons !== null);
  const actions = useDeskActions(refresh);
  const [renaming, setRenaming] = useState<LessonSummary | null>(null);
  const [filing, setFiling] = useState<string | null>(null);
  const main = useRef<HTMLElement>(null);
  const changed = useChanged();
  const { search, deferred, setSearch } = useSearch(tag);
  const found = useMemo(() => lessons && findLessons(lessons, deferred), [lessons, deferred]);
  const drawn = useFirstThenAll(found);
  const filed = lessons?.find(({ id }) => id === filing);
  const act = useSteady((lesson: LessonSummary, action: CardAction) => {
    if (action === 'rename') setRenaming(lesson);
    else if (action === 'file') setFiling(lesson.id);
    else if (action === 'archive') void actions.file(lesson, { isArchived: !lesson.isArchived });
    else if (action === 'duplicate') void actions.duplicate(lesson);
    else if (action === 'remove') void actions.remove(lesson).then(() => main.current?.focus());
    else void actions.take(lesson, action);
  });
  useDropped((file) => {
    const isLesson = ACCEPTED.some((ending) => file.name.toLowerCase().endsWith(ending));
    if (isLesson || !isTakeFile(file)) return void actions.bringIn(file);
    letWait(file);
    go({ at: 'students' });
  });
  return (
    <>
      <ScreenHead title={words.desk.title} lead={words.desk.lead}>
        <Button onClick={() => go({ at: 'students' })}>{words.desk.students}</Button>
        <Button onClick={() => go({ at: 'books' })}>{words.desk.books}</Button>
        <Button onClick={() => go({ at: 'bin' })}>{words.desk.bin}</Button>
        <FileButton
          accept={[...ACCEPTED, '.zip']}
          onFile={(file) => void actions.bringIn(file)}
          aria-description={words.desk.importHint}
        >
          <Icon name="file" />
          {words.desk.importFile}
        </FileButton>
        <PickMenu<StarterName>
          label={words.desk.startFrom}
          opens={words.desk.startFrom}
          placement="bottom end"
          items={Object.entries(words.desk.starters) as [StarterName, string][]}
          onPick={(name) => void actions.start(name)}
        />
        <Button dress="strong" onClick={() => void actions.start()}>
          <Icon name="plus" />
          {words.desk.newLesson}
        </Button>
      </ScreenHead>
      <main className={styles.desk} id="main" ref={main} tabIndex={-1} aria-label={words.desk.title}>
        <Guide at="open" />
        {error && <Problem>{wordsFor(error, words)}</Problem>}
        <Suspense>{damaged.length > 0 && <DamagedLessons lessons={damaged} />}</Suspense>
        {lessons?.length === 0 && <NothingYet>{words.desk.empty}</NothingYet>}
        {lessons && lessons.length > 0 && (
          <ListBar
            lessons={lessons}
            students={students}
            search={search}
            shown={found?.length ?? 0}
            onSearch={setSearch}
          />
        )}
        <ul className={styles.lessons}>
          {drawn?.map((lesson) => (
            <LessonCard key={lesson.id} lesson={lesson} changed={changed(lesson)} onAction={act} />
          ))}
        </ul>
      </main>
      {(lessons || error) && (
        <footer className={styles.preferences}>
          <Preferences
            language={tag}
            languages={Object.entries(LANGUAGES)}
            onLanguage={choose}
            words={words.settings}
          />
          <a href="/sound">{words.settings.trySound}</a>
          <SignOut />
        </footer>
      )}
      {filed && lessons && (
        <Suspense>
          <FilingSheet
            lesson={filed}
            lessons={lessons}
            students={students}
            onFile={(change) => void actions.file(filed, change)}
            onClose={() => setFiling(null)}
          />
        </Suspense>
      )}
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
