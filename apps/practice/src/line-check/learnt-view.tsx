/** What a line check came to, what can be played again, and keeping it under a name. */
import type { Voice } from '@shedbook/core';
import type { LearntKit } from '@shedbook/listen';
import { Button, Field, Problem } from '@shedbook/stand';
import type { LineCheckWords } from '@shedbook/words';
import { type FormEvent, useState } from 'react';
import inRow from '../ui/row.module.css';
import styles from './line-check-sheet.module.css';
import type { KitsView } from './use-kits.ts';

interface LearntViewProps {
  readonly learnt: LearntKit;
  /** The voices that were asked for. */
  readonly voices: readonly Voice[];
  readonly kits: KitsView;
  readonly words: LineCheckWords;
  readonly onKept: (name: string) => void;
}

/** What is said of it. */
function resultOf({ learnt, voices, words }: Pick<LearntViewProps, 'learnt' | 'voices' | 'words'>): string {
  const { unheard, slopes } = learnt;
  if (voices.length - unheard.length < 2) return words.result.none;
  if (unheard.length > 0) return words.result.some({ voices: unheard });
  return Object.keys(slopes).length === 0 ? words.result.nothing : words.result.all;
}

/** Under which name it is kept. */
function KeepForm({ learnt, voices, kits, words, onKept }: LearntViewProps) {
  const [name, setName] = useState(kits.chosen?.kit.name ?? words.own);
  const [isFull, setFull] = useState(false);
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    const called = name.trim();
    if (called === '') return;
    const { slopes, weights, unheard } = learnt;
    const heard = voices.filter((voice) => !unheard.includes(voice));
    try {
      await kits.keep({ kit: { name: called, slopes, weights }, voices: heard });
      onKept(called);
    } catch {
      setFull(true);
    }
  };
  return (
    <form className={styles.form} onSubmit={keep}>
      <Field
        label={words.name}
        value={name}
        maxLength={40}
        onChange={(event) => setName(event.target.value)}
      />
      <Button type="submit" dress="strong">
        {words.keep}
      </Button>
      {isFull && <Problem role="alert">{words.full}</Problem>}
    </form>
  );
}

interface LearntProps extends LearntViewProps {
  readonly again: (voices: readonly Voice[]) => void;
}

/** The view. */
export function LearntView({ again, ...props }: LearntProps) {
  const { learnt, voices, words } = props;
  const { unheard, slopes } = learnt;
  return (
    <div className={styles.part} data-part="learnt">
      <p role="status">
        <strong>{resultOf(props)}</strong>
      </p>
      {Object.keys(slopes).length > 0 && <KeepForm {...props} />}
      <div className={inRow.row}>
        {unheard.length > 0 && unheard.length < voices.length && (
          <Button onClick={() => again(unheard)}>{words.missing}</Button>
        )}
        <Button onClick={() => again(voices)}>{words.whole}</Button>
      </div>
    </div>
  );
}
