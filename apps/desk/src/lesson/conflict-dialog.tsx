/** Two windows changed the same lesson: both versions side by side, and a choice. */

import type { StoredLesson } from '@shedbook/routes';
import { Button, Sheet } from '@shedbook/stand';
import { createLesson } from '../document/api.ts';
import { useDocument } from '../document/use-document.ts';
import { setTitle, titleOf } from '../edit/heading.ts';
import { useWords } from '../words/words.tsx';
import styles from './conflict-dialog.module.css';
import { markDifferences, shortened } from './differences.ts';

interface ConflictDialogProps {
  readonly mine: string;
  readonly other: StoredLesson;
}

interface VersionProps {
  readonly title: string;
  readonly lines: readonly { readonly text: string; readonly differs: boolean }[];
}

/** Lines shown around each that differs. */
const CONTEXT = 2;

function Version({ title, lines }: VersionProps) {
  const words = useWords().conflict;
  return (
    <section className={styles.version} data-part="version" aria-label={title}>
      <h3>{title}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys (WCAG 2.2, 2.1.1) */}
      <pre tabIndex={0}>
        {shortened(lines, CONTEXT).map((stretch, index) =>
          stretch.kind === 'left out' ? (
            <span key={index} className={styles.leftOut}>
              {words.leftOut({ n: stretch.count })}
              {'\n'}
            </span>
          ) : (
            stretch.lines.map((line, at) => (
              <span key={`${index} ${at}`} data-differs={line.differs || undefined}>
                {line.differs && <span className="hidden-words">{words.changedLine}: </span>}
                {line.text}
                {'\n'}
              </span>
            ))
          ),
        )}
      </pre>
    </section>
  );
}

/** The dialog; it stays until somebody chooses. */
export function ConflictDialog({ mine, other }: ConflictDialogProps) {
  const document = useDocument();
  const words = useWords();
  const sides = markDifferences(mine, other.text);
  const keepBoth = async () => {
    const title = titleOf(mine) ?? words.desk.untitled;
    await createLesson(setTitle(mine, words.desk.copyOf({ title })));
    document.takeTheirs();
  };
  return (
    <Sheet
      title={words.conflict.title}
      isWide
      mustAnswer
      actions={
        <>
          <Button onClick={() => void keepBoth()}>{words.conflict.keepBoth}</Button>
          <Button onClick={() => document.takeTheirs()}>{words.conflict.keepTheirs}</Button>
          <Button dress="strong" onClick={() => document.keepMine()}>
            {words.conflict.keepMine}
          </Button>
        </>
      }
    >
      <p>{words.conflict.lead}</p>
      <div className={styles.versions}>
        <Version title={words.conflict.mine} lines={sides.mine} />
        <Version title={words.conflict.theirs} lines={sides.theirs} />
      </div>
    </Sheet>
  );
}
