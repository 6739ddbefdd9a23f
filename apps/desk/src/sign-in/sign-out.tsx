/** Signing out; nothing where nobody has to sign in. */
import { Button } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import { ask } from '../document/client.ts';
import { useWords } from '../words/words.tsx';

/** The button. */
export function SignOut() {
  const words = useWords();
  const [name, setName] = useState<string | null>(null);
  useEffect(() => {
    ask('readSession', {}).then(
      ({ state, school }) => setName(state === 'in' ? (school?.teacher?.name ?? '') : null),
      () => undefined,
    );
  }, []);
  if (name === null) return null;
  const leave = async () => {
    await ask('signOut', {}).catch(() => undefined);
    window.location.reload();
  };
  return (
    <Button onClick={() => void leave()}>
      {name === '' ? words.signIn.out : `${words.signIn.out} (${name})`}
    </Button>
  );
}
