/** The desk: the desk, the students, the books, the bin, or a lesson lying open. */
import { BrokenPage, NoticeProvider } from '@shedbook/stand';
import { Suspense } from 'react';
import { Desk } from './desk/desk.tsx';
import { signedIn, useAskedToSignIn } from './document/asked-to-sign-in.ts';
import { sharedPlayer } from './hear/shared-player.ts';
import { LessonScreen } from './lesson/lesson-screen.tsx';
import { lazily, useLeisure } from './loading/later.ts';
import { GlyphSheet } from './notation/glyph-sheet.tsx';
import { readRoute } from './shared/address.ts';
import { go, usePath } from './shared/route.ts';
import { DeskWordsProvider, useLanguage, useWords } from './words/words.tsx';

const StudentsScreen = lazily(
  () => import('./students/students-screen.tsx'),
  (module) => module.StudentsScreen,
);

const BinScreen = lazily(
  () => import('./desk/bin-screen.tsx'),
  (module) => module.BinScreen,
);

const BooksScreen = lazily(
  () => import('./books/books-screen.tsx'),
  (module) => module.BooksScreen,
);

const SoundCheck = lazily(
  () => import('@shedbook/stand/sound-check'),
  (module) => module.SoundCheck,
);

const SignInScreen = lazily(
  () => import('./sign-in/sign-in-screen.tsx'),
  (module) => module.SignInScreen,
);

function Screen() {
  const route = readRoute(usePath());
  const { tag } = useLanguage();
  const isAsked = useAskedToSignIn();
  // A student's phone is tried by whoever holds it: nothing of the desk is on that page.
  if (route.at === 'sound') {
    return (
      <Suspense>
        <SoundCheck tag={tag} player={sharedPlayer()} onBack={() => go({ at: 'desk' })} />
      </Suspense>
    );
  }
  if (isAsked) {
    return (
      <Suspense>
        <SignInScreen onIn={signedIn} />
      </Suspense>
    );
  }
  switch (route.at) {
    case 'desk':
      return <Desk />;
    case 'students':
      return (
        <Suspense>
          <StudentsScreen />
        </Suspense>
      );
    case 'bin':
      return (
        <Suspense>
          <BinScreen />
        </Suspense>
      );
    case 'books':
      return (
        <Suspense>
          <BooksScreen />
        </Suspense>
      );
    case 'lesson':
      return <LessonScreen key={route.id} id={route.id} view={route.view} />;
    default:
      return route satisfies never;
  }
}

function Guarded() {
  // what was said before is nothing to whoever has to sign in, nor after it
  const who = useAskedToSignIn() ? 'nobody' : 'somebody';
  return (
    <BrokenPage words={useWords().brokenPage} home="/">
      <NoticeProvider key={who}>
        <GlyphSheet />
        <Screen />
      </NoticeProvider>
    </BrokenPage>
  );
}

/** Everything. */
export function App() {
  useLeisure();
  return (
    <DeskWordsProvider>
      <Guarded />
    </DeskWordsProvider>
  );
}
