/** Who comes: a passphrase, and a name where there are several teachers. */
import { Button, Field } from '@shedbook/stand';
import type { SchoolWords } from '@shedbook/words';
import { type FormEvent, useEffect, useState } from 'react';
import { ask, RefusedError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';

interface SignInFormProps {
  readonly words: SchoolWords['signIn'];
  readonly onIn: () => void;
}

/** Whether a name is asked for; null while that is not known. */
function useAsksName(): boolean | null {
  const [asks, setAsks] = useState<boolean | null>(null);
  useEffect(() => {
    ask('readSession', {}).then(
      ({ school }) => setAsks(school !== undefined),
      () => setAsks(false),
    );
  }, []);
  return asks;
}

/** The form. */
export function SignInForm({ words, onIn }: SignInFormProps) {
  const all = useWords();
  const asksName = useAsksName();
  const [name, setName] = useState('');
  const [passphrase, setPassphrase] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsking, setAsking] = useState(false);
  if (asksName === null) return null;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setAsking(true);
    try {
      await ask('signIn', { body: asksName ? { name, passphrase } : { passphrase } });
      onIn();
    } catch (error) {
      const isWrong = error instanceof RefusedError && error.code === 'wrong-passphrase';
      setProblem(isWrong && asksName ? words.wrong : wordsFor(error, all));
      setAsking(false);
    }
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      {asksName && (
        <Field
          label={words.name}
          autoComplete="username"
          autoFocus
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
      )}
      <Field
        label={words.passphrase}
        type="password"
        autoComplete="current-password"
        required
        autoFocus={!asksName}
        value={passphrase}
        problem={problem}
        problemRole="alert"
        onChange={(event) => setPassphrase(event.target.value)}
      />
      <Button dress="strong" type="submit" disabled={isAsking}>
        {words.title}
      </Button>
    </form>
  );
}
