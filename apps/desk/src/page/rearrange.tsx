/** The tools that copy, turn and move: folded away, and loaded when they are first unfolded. */
import { Suspense, useState } from 'react';
import { lazily } from '../loading/later.ts';
import { useWords } from '../words/words.tsx';
import styles from './rearrange.module.css';
import type { RearrangeToolsProps } from './rearrange-tools.tsx';

const RearrangeTools = lazily(
  () => import('./rearrange-tools.tsx'),
  (module) => module.RearrangeTools,
);

/** The tools under their name. */
export function Rearrange(props: RearrangeToolsProps) {
  const words = useWords().rearrange;
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      className={styles.tools}
      data-part="rearrange"
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{words.title}</summary>
      {isOpen && (
        <Suspense>
          <RearrangeTools {...props} />
        </Suspense>
      )}
    </details>
  );
}
