/** Dynamics, texts and silence of an exercise, folded away until they are wanted. */
import { Suspense, useState } from 'react';
import styles from '../line/tool-box.module.css';
import { lazily } from '../loading/later.ts';
import { useWords } from '../words/words.tsx';
import type { SaidToolsProps } from './said-form.tsx';

const SaidForm = lazily(
  () => import('./said-form.tsx'),
  (module) => module.SaidForm,
);

/** The fold. */
export function SaidTools(props: SaidToolsProps) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={styles.fold}>{useWords().page.said}</summary>
      <Suspense>{open && <SaidForm {...props} />}</Suspense>
    </details>
  );
}
