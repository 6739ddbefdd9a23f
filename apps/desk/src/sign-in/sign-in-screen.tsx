/** Signing in, where others reach the desk, too. */
import { Button, Field } from '@shedbook/stand';
import { type FormEvent, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { ScreenHead } from '../shared/screen-head.tsx';
import { useWords } from '../words/words.tsx';
import styles from './sign-in-screen.module.css';

/** The screen. @param props.onIn called when the passphrase was right */
export function SignInScreen({ onIn }: { readonly onIn: () => void }) {
  const words = useWords();
  const [passphrase, setPassphrase] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsking, setAsking] = useState(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setAsking(true);
    try {
      await ask('signIn', { body: { passphrase } });
      onIn();
    } catch (error) {
      setProblem(wordsFor(error, words));
      setAsking(false);
    }
  };
  return (
    <>
      <ScreenHead title={words.desk.title} lead={words.signIn.lead}>
        {null}
      </ScreenHead>
      <main className={styles.signIn} aria-label={words.signIn.title}>
        <form onSubmit={(event) => void submit(event)}>
          <Field
            label={words.signIn.passphrase}
            type="password"
            autoComplete="current-password"
            required
            autoFocus
            value={passphrase}
            problem={problem}
            problemRole="alert"
            onChange={(event) => setPassphrase(event.target.value)}
          />
          <Button dress="strong" type="submit" disabled={isAsking}>
            {words.signIn.title}
          </Button>
        </form>
      </main>
    </>
  );
}
