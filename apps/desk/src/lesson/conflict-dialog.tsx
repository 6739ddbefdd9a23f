/** Two windows changed the same lesson: both versions side by side, and a choice. */
import type { StoredLesson } from '@shedbook/server';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { createLesson } from '../document/api.ts';
import { useDocument } from '../document/use-document.ts';
import { setTitle, titleOf } from '../edit/heading.ts';
import { useWords } from '../words/words.tsx';
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
    <section className="version" aria-label={title}>
      <h3>{title}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys (WCAG 2.2, 2.1.1) */}
      <pre tabIndex={0}>
        {shortened(lines, CONTEXT).map((stretch, index) =>
          stretch.kind === 'left out' ? (
            <span key={index} className="left-out">
              {words.leftOut(stretch.count)}
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
    await createLesson(setTitle(mine, words.desk.copyOf(title)));
    document.takeTheirs();
  };
  return (
    <ModalOverlay className="veil" isOpen isKeyboardDismissDisabled>
      <Modal className="sheet-dialog wide">
        <Dialog role="alertdialog">
          <Heading slot="title">{words.conflict.title}</Heading>
          <p>{words.conflict.lead}</p>
          <div className="versions">
            <Version title={words.conflict.mine} lines={sides.mine} />
            <Version title={words.conflict.theirs} lines={sides.theirs} />
          </div>
          <div className="dialog-actions">
            <Button className="button" onPress={() => void keepBoth()}>
              {words.conflict.keepBoth}
            </Button>
            <Button className="button" onPress={() => document.takeTheirs()}>
              {words.conflict.keepTheirs}
            </Button>
            <Button className="button strong" onPress={() => document.keepMine()}>
              {words.conflict.keepMine}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
