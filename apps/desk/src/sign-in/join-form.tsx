/** The letter that lets a teacher in: they choose a passphrase, once. */
import { SHORTEST_PASSPHRASE } from '@shedbook/routes';
import { Button, Field } from '@shedbook/stand';
import type { SchoolWords } from '@shedbook/words';
import { type FormEvent, useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';

interface JoinFormProps {
  readonly words: SchoolWords['join'];
  /** The secret of the letter. */
  readonly letter: string;
  readonly onIn: () => void;
}

/** The form. */
export function JoinForm({ words, letter, onIn }: JoinFormProps) {
  const all = useWords();
  const [passphrase, setPassphrase] = useState('');
  const [again, setAgain] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [isAsking, setAsking] = useState(false);
  const isShort = passphrase.length < SHORTEST_PASSPHRASE;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (isShort) return setProblem(words.short({ least: SHORTEST_PASSPHRASE }));
    if (passphrase !== again) return setProblem(words.differ);
    setAsking(true);
    try {
      await ask('acceptInvitation', { body: { token: letter, passphrase } });
      // the letter is used: nobody needs to come by it again
      window.history.replaceState(null, '', window.location.pathname);
      onIn();
    } catch (error) {
      setProblem(wordsFor(error, all));
      setAsking(false);
    }
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <Field
        label={words.passphrase}
        type="password"
        autoComplete="new-password"
        required
        autoFocus
        value={passphrase}
        onChange={(event) => setPassphrase(event.target.value)}
      />
      <Field
        label={words.again}
        type="password"
        autoComplete="new-password"
        required
        value={again}
        problem={problem}
        problemRole="alert"
        onChange={(event) => setAgain(event.target.value)}
      />
      <p className="quiet">{words.short({ least: SHORTEST_PASSPHRASE })}</p>
      <Button dress="strong" type="submit" disabled={isAsking}>
        {words.done}
      </Button>
    </form>
  );
}
