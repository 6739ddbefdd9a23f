/** A lesson lying open: what can be seen of it, whether it is kept, and what is heard. */
import { useSay } from '@shedbook/stand';
import { Suspense, useCallback } from 'react';
import {
  DocumentProvider,
  useDocumentState,
  useFreshness,
  useLeaveWarning,
  useOpenLesson,
} from '../document/use-document.ts';
import { Ledge } from '../hear/ledge.tsx';
import { SoundProvider } from '../hear/sound-context.tsx';
import { lazily } from '../loading/later.ts';
import type { View } from '../shared/address.ts';
import { useWords } from '../words/words.tsx';
import { IndexTabs } from './index-tabs.tsx';
import { LessonBar } from './lesson-bar.tsx';
import styles from './lesson-screen.module.css';
import { useUndoKeys } from './use-undo-keys.ts';
import { ViewContent } from './view-content.tsx';

const ConflictDialog = lazily(
  () => import('./conflict-dialog.tsx'),
  (module) => module.ConflictDialog,
);

interface LessonScreenProps {
  readonly id: string;
  readonly view: View;
}

function OpenLesson({ view }: { readonly view: View }) {
  const state = useDocumentState();
  const words = useWords();
  useUndoKeys();
  return (
    <SoundProvider lesson={state.lesson}>
      <div className={styles.lesson} data-view={view}>
        <a className="skip" href="#main">
          {words.lesson.views[view]}
        </a>
        <LessonBar state={state} isHidden={view === 'room'} />
        <div className={styles.stand}>
          <IndexTabs id={state.id} view={view} />
          <main id="main" tabIndex={-1} aria-label={words.lesson.views[view]}>
            <ViewContent state={state} view={view} />
          </main>
        </div>
        <Ledge />
        <Suspense>{state.other && <ConflictDialog mine={state.text} other={state.other} />}</Suspense>
      </div>
    </SoundProvider>
  );
}

/** The screen. */
export function LessonScreen({ id, view }: LessonScreenProps) {
  const words = useWords().lesson;
  const say = useSay();
  const { document, error } = useOpenLesson(id);
  useFreshness(
    document,
    useCallback(() => say(words.freshened), [say, words]),
  );
  useLeaveWarning(document);
  if (error) return <main className={styles.message}>{words.missing}</main>;
  if (!document) return <main className={styles.message}>{words.opening}</main>;
  return (
    <DocumentProvider value={document}>
      <OpenLesson view={view} />
    </DocumentProvider>
  );
}
