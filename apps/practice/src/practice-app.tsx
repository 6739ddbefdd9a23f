/** The practice room: the sheet, or one exercise on the stand. */
import type { Pack } from '@shedbook/pack';
import { BrokenPage, Player } from '@shedbook/stand';
import { lazy, Suspense, useEffect, useState } from 'react';
import { loadOthers } from './load-pack.ts';
import { NewerVersion } from './offline/newer-version.tsx';
import { goTo, usePlace } from './page/route.ts';
import { PracticeWordsProvider, usePracticeLanguage, usePracticeWords } from './page/words.tsx';
import styles from './practice-app.module.css';
import { SessionProvider, usePracticeSession } from './session/practice-session.tsx';
import { ShelfProvider } from './session/shelf.tsx';
import { SheetPage } from './sheet/sheet-page.tsx';
import { StagePage } from './stage/stage-page.tsx';

const SoundCheck = lazy(async () => {
  const { SoundCheck: Page } = await import('@shedbook/stand/sound-check');
  return { default: Page };
});

type Loading =
  | { readonly at: 'loading' | 'broken' }
  /** The page's own pack first; `isWhole` once the student's other ones have come, too. */
  | { readonly at: 'ready'; readonly packs: readonly [Pack, ...Pack[]]; readonly isWhole: boolean };

function Screen() {
  const { place, player } = usePracticeSession();
  const { tag } = usePracticeLanguage();
  switch (place.at) {
    case 'sheet':
      return <SheetPage />;
    case 'stage':
      return <StagePage />;
    case 'sound':
      return (
        <Suspense fallback={null}>
          <SoundCheck tag={tag} player={player} onBack={() => goTo({ at: 'sheet' })} />
        </Suspense>
      );
    default:
      return place satisfies never;
  }
}

/** Loads the packs. */
function usePacksOf(loading: Promise<Pack>): Loading {
  const [state, setState] = useState<Loading>({ at: 'loading' });
  useEffect(() => {
    loading.then(
      async (pack) => {
        setState({ at: 'ready', packs: [pack], isWhole: false });
        setState({ at: 'ready', packs: [pack, ...(await loadOthers(pack))], isWhole: true });
      },
      () => setState({ at: 'broken' }),
    );
  }, [loading]);
  return state;
}

/** The pack that is asked for: the page's own on its sheet, on the stand the one that the address names. */
function useOpenPack(state: Loading): Pack | null {
  const place = usePlace();
  const wanted = place.at === 'stage' ? place.lesson : undefined;
  const packs = state.at === 'ready' ? state.packs : [];
  const open = wanted === undefined ? packs[0] : packs.find(({ id }) => id === wanted);
  const isGone = state.at === 'ready' && state.isWhole && !open;
  useEffect(() => {
    if (isGone) goTo({ at: 'sheet' });
  }, [isGone]);
  return open ?? null;
}

function Opened({ loading }: { readonly loading: Promise<Pack> }) {
  const words = usePracticeWords();
  const [player] = useState(() => new Player());
  const state = usePacksOf(loading);
  const open = useOpenPack(state);
  if (state.at !== 'ready' || !open) {
    return (
      <main className={styles.message}>
        <p role="status">{state.at === 'broken' ? words.broken : words.opening}</p>
      </main>
    );
  }
  return (
    <ShelfProvider packs={state.packs}>
      <SessionProvider key={open.id} pack={open} home={state.packs[0].id} player={player}>
        <Screen />
        <NewerVersion />
      </SessionProvider>
    </ShelfProvider>
  );
}

/** The sheet is the beginning, at an address without an exercise. */
const HOME = '#';

function Guarded({ loading }: { readonly loading: Promise<Pack> }) {
  return (
    <BrokenPage words={usePracticeWords().brokenPage} home={HOME}>
      <Opened loading={loading} />
    </BrokenPage>
  );
}

/** Everything. */
export function PracticeApp({ pack }: { readonly pack: Promise<Pack> }) {
  return (
    <PracticeWordsProvider>
      <Guarded loading={pack} />
    </PracticeWordsProvider>
  );
}
