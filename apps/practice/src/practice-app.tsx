/** The practice room: the sheet, or one exercise on the stand. */
import type { Pack } from '@shedbook/pack';
import { useEffect, useState } from 'react';
import { NewerVersion } from './offline/newer-version.tsx';
import { PracticeWordsProvider, usePracticeWords } from './page/words.tsx';
import styles from './practice-app.module.css';
import { SessionProvider, usePracticeSession } from './session/practice-session.tsx';
import { SheetPage } from './sheet/sheet-page.tsx';
import { StagePage } from './stage/stage-page.tsx';

type Loading = { readonly at: 'loading' | 'broken' } | { readonly at: 'ready'; readonly pack: Pack };

function Screen() {
  const { place } = usePracticeSession();
  switch (place.at) {
    case 'sheet':
      return <SheetPage />;
    case 'stage':
      return <StagePage />;
    default:
      return place satisfies never;
  }
}

function Opened({ loading }: { readonly loading: Promise<Pack> }) {
  const words = usePracticeWords();
  const [state, setState] = useState<Loading>({ at: 'loading' });
  useEffect(() => {
    loading.then(
      (pack) => setState({ at: 'ready', pack }),
      () => setState({ at: 'broken' }),
    );
  }, [loading]);
  if (state.at !== 'ready') {
    return (
      <main className={styles.message}>
        <p role="status">{state.at === 'broken' ? words.broken : words.opening}</p>
      </main>
    );
  }
  return (
    <SessionProvider pack={state.pack}>
      <Screen />
      <NewerVersion />
    </SessionProvider>
  );
}

/** Everything. */
export function PracticeApp({ pack }: { readonly pack: Promise<Pack> }) {
  return (
    <PracticeWordsProvider>
      <Opened loading={pack} />
    </PracticeWordsProvider>
  );
}
