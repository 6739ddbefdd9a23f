/** Signing in, where others reach the desk, too; or taking up the letter that lets a teacher in. */
import { useState } from 'react';
import { ScreenHead } from '../shared/screen-head.tsx';
import { useSchoolWords } from '../words/late-words.ts';
import { useWords } from '../words/words.tsx';
import { JoinForm } from './join-form.tsx';
import { SignInForm } from './sign-in-form.tsx';
import styles from './sign-in-screen.module.css';

/** The secret of a letter, where one was opened: it stands behind the sign that no server is told. */
function letterIn({ hash }: Location): string | null {
  return /^#invitation=([\w-]+)$/.exec(hash)?.[1] ?? null;
}

/** The screen. @param props.onIn called when somebody is in */
export function SignInScreen({ onIn }: { readonly onIn: () => void }) {
  const { desk } = useWords();
  const words = useSchoolWords();
  const [letter] = useState(() => letterIn(window.location));
  if (!words) return null;
  const { title, lead } = letter === null ? words.signIn : words.join;
  return (
    <>
      <ScreenHead title={letter === null ? desk.title : title} lead={lead}>
        {null}
      </ScreenHead>
      <main className={styles.signIn} aria-label={title}>
        {letter === null ? (
          <SignInForm words={words.signIn} onIn={onIn} />
        ) : (
          <JoinForm words={words.join} letter={letter} onIn={onIn} />
        )}
      </main>
    </>
  );
}
