/** Passkeys of whoever signed in: made on this device, and removed. */
import type { StoredPasskey } from '@shedbook/routes';
import { Button, Icon, useSay } from '@shedbook/stand';
import type { SchoolWords } from '@shedbook/words';
import { browserSupportsWebAuthn } from '@simplewebauthn/browser';
import { ask, RefusedError, UnreachableError } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useFresh } from '../document/use-fresh.ts';
import { makePasskey } from '../sign-in/passkeys.ts';
import { useSchoolWords } from '../words/late-words.ts';
import { useLanguage } from '../words/students-words.tsx';
import styles from './passkeys.module.css';

const read = () => ask('listPasskeys', {});

interface ListedProps {
  readonly passkey: StoredPasskey;
  readonly n: number;
  readonly words: SchoolWords['passkeys'];
  readonly onRemove: () => void;
}

function Listed({ passkey: { madeAt, usedAt }, n, words, onRemove }: ListedProps) {
  const { tag } = useLanguage();
  const day = (moment: string) => new Date(moment).toLocaleDateString(tag, { day: 'numeric', month: 'long' });
  return (
    <li>
      <span>
        {words.made({ day: day(madeAt) })} {usedAt === null ? words.unused : words.used({ day: day(usedAt) })}
      </span>
      <Button onClick={onRemove} aria-label={words.removeThis({ n })}>
        {words.remove}
      </Button>
    </li>
  );
}

/** The list, and making one; nothing where the browser knows none. */
export function Passkeys() {
  const words = useSchoolWords();
  const { words: all } = useLanguage();
  const say = useSay();
  const { value: passkeys, refresh } = useFresh(read);
  if (!words || !passkeys || !browserSupportsWebAuthn()) return null;
  const attempt = async (work: () => Promise<unknown>, done: string) => {
    try {
      await work();
      say(done);
    } catch (error) {
      const isOurs = error instanceof RefusedError || error instanceof UnreachableError;
      // what a browser says here is for programs; most often somebody thought better of it
      say(isOurs ? wordsFor(error, all) : words.passkeys.notMade);
    }
    await refresh();
  };
  const remove = (passkey: string) =>
    attempt(() => ask('removePasskey', { params: { passkey } }), words.passkeys.removed);
  return (
    <section className={styles.passkeys} aria-label={words.passkeys.title} data-part="passkeys">
      <h2>{words.passkeys.title}</h2>
      <p className="quiet">{words.passkeys.lead}</p>
      {passkeys.length > 0 && (
        <ul>
          {passkeys.map((passkey, index) => (
            <Listed
              key={passkey.id}
              {...{ passkey, n: index + 1, words: words.passkeys }}
              onRemove={() => void remove(passkey.id)}
            />
          ))}
        </ul>
      )}
      <Button onClick={() => void attempt(makePasskey, words.passkeys.added)}>
        <Icon name="plus" />
        {words.passkeys.add}
      </Button>
    </section>
  );
}
