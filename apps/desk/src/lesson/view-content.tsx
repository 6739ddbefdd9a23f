/** One view of the lesson; while its text has problems, the lesson as it last could be read. */
import { Button } from '@shedbook/stand';
import { Suspense } from 'react';
import type { DocumentState } from '../document/lesson-document.ts';
import { lazily } from '../loading/later.ts';
import { PageView } from '../page/page-view.tsx';
import type { View } from '../shared/address.ts';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import styles from './view-content.module.css';

const TextView = lazily(
  () => import('../text/text-view.tsx'),
  (module) => module.TextView,
);
const GrooveView = lazily(
  () => import('../groove/groove-view.tsx'),
  (module) => module.GrooveView,
);
const ComposeView = lazily(
  () => import('../compose/compose-view.tsx'),
  (module) => module.ComposeView,
);
const RoomView = lazily(
  () => import('../room/room-view.tsx'),
  (module) => module.RoomView,
);
const PrintView = lazily(
  () => import('../print/print-view.tsx'),
  (module) => module.PrintView,
);

interface ViewContentProps {
  readonly state: DocumentState;
  readonly view: View;
}

function Broken({ state }: { readonly state: DocumentState }) {
  const words = useWords().lesson;
  return (
    <div className={styles.broken} role="alert">
      <p>{state.lesson ? words.brokenText : words.nothingReadable}</p>
      <Button onClick={() => go({ at: 'lesson', id: state.id, view: 'text' })}>{words.mend}</Button>
    </div>
  );
}

interface ReadableProps {
  readonly state: DocumentState;
  readonly view: Exclude<View, 'text'>;
}

function Readable({ state, view }: ReadableProps) {
  const { lesson } = state;
  if (!lesson) return null;
  switch (view) {
    case 'page':
      return <PageView lesson={lesson} />;
    case 'groove':
      return <GrooveView lesson={lesson} />;
    case 'compose':
      return <ComposeView state={state} lesson={lesson} />;
    case 'print':
      return <PrintView state={state} lesson={lesson} />;
    case 'room':
      return <RoomView id={state.id} lesson={lesson} />;
    default:
      return view satisfies never;
  }
}

/** What the view shows. */
export function ViewContent({ state, view }: ViewContentProps) {
  if (view === 'text') {
    return (
      <Suspense>
        <TextView state={state} />
      </Suspense>
    );
  }
  const broken = state.reading.lesson === null;
  return (
    <>
      {broken && <Broken state={state} />}
      <div inert={broken}>
        <Suspense>
          <Readable state={state} view={view} />
        </Suspense>
      </div>
    </>
  );
}
