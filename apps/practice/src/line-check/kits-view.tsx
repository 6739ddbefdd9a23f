/** The kits that are kept: which the ear hears with, its name, and forgetting it. */
import type { Voice } from '@shedbook/core';
import { Button, Choices, Field, Problem } from '@shedbook/stand';
import type { LineCheckWords } from '@shedbook/words';
import { type FormEvent, useState } from 'react';
import type { KeptKit } from './kept-kit.ts';
import styles from './line-check-sheet.module.css';
import type { KitsView as Kits } from './use-kits.ts';

interface ChosenProps {
  readonly chosen: KeptKit;
  readonly kits: Kits;
  readonly words: LineCheckWords;
}

function Chosen({ chosen, kits, words }: ChosenProps) {
  const { name } = chosen.kit;
  const [text, setText] = useState(name);
  const next = text.trim();
  const isTaken = next !== name && kits.all.some(({ kit }) => kit.name === next);
  const rename = (event: FormEvent) => {
    event.preventDefault();
    if (next !== '' && next !== name && !isTaken) kits.rename(chosen, next);
  };
  return (
    <form className={styles.form} onSubmit={rename}>
      <Field
        label={words.name}
        value={text}
        maxLength={40}
        problem={isTaken && words.taken}
        onChange={(event) => setText(event.target.value)}
      />
      <Button type="submit">{words.rename}</Button>
      <Button onClick={() => kits.forget(name)}>{words.forget({ name })}</Button>
    </form>
  );
}

interface KitsViewProps {
  readonly kits: Kits;
  /** Voices of the lesson. */
  readonly voices: readonly Voice[];
  readonly words: LineCheckWords;
}

/** The view; nothing where none is kept. */
export function KitsView({ kits, voices, words }: KitsViewProps) {
  const { all, chosen } = kits;
  if (all.length === 0) return null;
  const name = chosen?.kit.name ?? '';
  const missing = chosen ? voices.filter((voice) => !chosen.voices.includes(voice)) : [];
  return (
    <div className={styles.part} data-part="kits">
      <Choices
        label={words.hears}
        value={name}
        choices={[...all.map(({ kit }) => [kit.name, kit.name] as const), ['', words.without]]}
        onChange={kits.choose}
      />
      {chosen && kits.isOld(name) && <Problem>{words.old({ name })}</Problem>}
      {chosen && !kits.isOld(name) && missing.length > 0 && (
        <p className="quiet">{words.others({ name, voices: missing })}</p>
      )}
      {chosen && <Chosen key={name} chosen={chosen} kits={kits} words={words} />}
    </div>
  );
}
