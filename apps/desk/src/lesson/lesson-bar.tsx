/** The strip over the sheet: back to the desk, undo and redo, and whether everything is kept. */

import { Button, Icon } from '@shedbook/stand';
import type { DocumentState } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import styles from './lesson-bar.module.css';

interface LessonBarProps {
  readonly state: DocumentState;
  /** Whether it is out of sight: in the lesson room all is notation. */
  readonly isHidden: boolean;
}

/** The strip. */
export function LessonBar({ state, isHidden }: LessonBarProps) {
  const document = useDocument();
  const { lesson: words, refusals } = useWords();
  return (
    <header className={styles.bar} hidden={isHidden}>
      <Button dress="bare" onClick={() => go({ at: 'desk' })}>
        <Icon name="back" />
        {words.backToDesk}
      </Button>
      <h1 className="hidden-words">{state.lesson?.title ?? words.nothingReadable}</h1>
      <p className={styles.keeping} data-part="keeping" role="status" data-keeping={state.keeping}>
        {state.keeping === 'notYours' ? refusals['not-yours'] : words[state.keeping]}
      </p>
      <div className={styles.undoRedo}>
        <Button
          dress="bare"
          aria-label={words.undo}
          disabled={!state.canUndo}
          onClick={() => void document.undo()}
        >
          <Icon name="undo" />
        </Button>
        <Button
          dress="bare"
          aria-label={words.redo}
          disabled={!state.canRedo}
          onClick={() => void document.redo()}
        >
          <Icon name="redo" />
        </Button>
      </div>
    </header>
  );
}
