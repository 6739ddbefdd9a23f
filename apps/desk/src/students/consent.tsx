/** Whether a guardian decides about recordings of a student, and who consented. */
import type { MinorityRequest, StoredStudent } from '@shedbook/routes';
import { Button, Check, Field } from '@shedbook/stand';
import { useState } from 'react';
import { useLanguage } from '../words/students-words.tsx';
import styles from './consent.module.css';

interface ConsentProps {
  readonly student: StoredStudent;
  /** Keeps it, and says so. */
  readonly onNote: (minority: MinorityRequest, said: string) => void;
}

/** What there is to note of a minor. */
function Guardian({ student, onNote }: ConsentProps) {
  const { words, tag } = useLanguage();
  const [by, setBy] = useState('');
  const { consent } = student.minority;
  const said = words.consent;
  if (consent) {
    const day = new Date(consent.notedAt).toLocaleDateString(tag, { dateStyle: 'long' });
    return (
      <>
        <p>{said.given({ by: consent.by, day })}</p>
        <Button onClick={() => onNote({ isMinor: true, consentBy: null }, said.withdrawn)}>
          {said.withdraw}
        </Button>
      </>
    );
  }
  const name = by.trim();
  return (
    <>
      <p>{said.missing({ name: student.name })}</p>
      <Field label={said.by} value={by} maxLength={200} onChange={(event) => setBy(event.target.value)} />
      <Button disabled={name === ''} onClick={() => onNote({ isMinor: true, consentBy: name }, said.noted)}>
        {said.note}
      </Button>
    </>
  );
}

/** The section. */
export function Consent({ student, onNote }: ConsentProps) {
  const { words } = useLanguage();
  const { isMinor } = student.minority;
  const { title } = words.consent;
  return (
    <section className={styles.consent} aria-label={title} data-part="consent">
      <h3>{title}</h3>
      <Check
        checked={isMinor}
        onChange={(is) => onNote({ isMinor: is, consentBy: null }, words.consent.noted)}
      >
        {words.consent.isMinor}
      </Check>
      {isMinor && <Guardian student={student} onNote={onNote} />}
    </section>
  );
}
