/** Who comes: a passphrase, and a name where there are several teachers. */
import type { Session } from '@shedbook/routes';
import { Button, Field } from '@shedbook/stand';
import type { SchoolWords } from '@shedbook/words';
import { browserSupportsWebAuthn } from '@simplewebauthn/browser';
import { type FormEvent, useEffect, useState } from 'react';
import { ask, RefusedError, UnreachableError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';
import { signInByPasskey } from './passkeys.ts';

interface SignInFormProps {
  readonly words: SchoolWords['signIn'];
  readonly onIn: () => void;
}

/** What the server asks of whoever comes; null while that is not known. */
function useSession(): Session | null {
  const [session, setSession] = useState<Session | null>(null);
  useEffect(() => {
    ask('readSession', {}).then(setSession, () => setSession({ state: 'out' }));
  }, []);
  return session;
}

/** The form. */
export function SignInForm({ words, onIn }: SignInFormProps) {
  const all = useWords();
  const session = useSession();
  const [name, setName] = useState('');
  const [passphrase, setPassphrase] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsking, setAsking] = useState(false);
  if (!session) return null;
  const asksName = session.school !== undefined;
  const hasPasskeys = session.hasPasskeys && browserSupportsWebAuthn();
  /** A sentence for what went wrong; what a browser says of passkeys is for programs. */
  const sentence = (error: unknown) => {
    const isWrong = error instanceof RefusedError && error.code === 'wrong-passphrase';
    if (isWrong && asksName) return words.wrong;
    const isOurs = error instanceof RefusedError || error instanceof UnreachableError;
    return isOurs ? wordsFor(error, all) : words.noPasskey;
  };
  const enter = async (way: () => Promise<unknown>) => {
    setAsking(true);
    try {
      await way();
      onIn();
    } catch (error) {
      setProblem(sentence(error));
      setAsking(false);
    }
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void enter(() => ask('signIn', { body: asksName ? { name, passphrase } : { passphrase } }));
  };
  return (
    <form onSubmit={submit}>
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
      {hasPasskeys && (
        <Button disabled={isAsking} onClick={() => void enter(signInByPasskey)}>
          {words.passkey}
        </Button>
      )}
    </form>
  );
}
