/** Signing out; nothing where nobody has to sign in. */
import { Button } from '@shedbook/stand';
import { useEffect, useState } from 'react';
import { ask } from '../document/client.ts';
import { useWords } from '../words/words.tsx';

/** The button. */
export function SignOut() {
  const words = useWords();
  const [isIn, setIn] = useState(false);
  useEffect(() => {
    ask('readSession', {}).then(
      ({ state }) => setIn(state === 'in'),
      () => undefined,
    );
  }, []);
  if (!isIn) return null;
  const leave = async () => {
    await ask('signOut', {}).catch(() => undefined);
    window.location.reload();
  };
  return <Button onClick={() => void leave()}>{words.signIn.out}</Button>;
}
