/** The strip over the sheet: back to the desk, undo and redo, and whether everything is kept. */

import { Icon } from '@shedbook/stand';
import { Button } from 'react-aria-components';
import type { DocumentState } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';

/** The strip. */
export function LessonBar({ state }: { readonly state: DocumentState }) {
  const document = useDocument();
  const words = useWords().lesson;
  return (
    <header className="lesson-bar">
      <Button className="button bare" onPress={() => go({ at: 'desk' })}>
        <Icon name="back" />
        {words.backToDesk}
      </Button>
      <h1 className="hidden-words">{state.lesson?.title ?? words.nothingReadable}</h1>
      <p className="keeping" role="status" data-keeping={state.keeping}>
        {words[state.keeping]}
      </p>
      <div className="undo-redo">
        <Button
          className="button bare"
          aria-label={words.undo}
          isDisabled={!state.canUndo}
          onPress={() => void document.undo()}
        >
          <Icon name="undo" />
        </Button>
        <Button
          className="button bare"
          aria-label={words.redo}
          isDisabled={!state.canRedo}
          onPress={() => void document.redo()}
        >
          <Icon name="redo" />
        </Button>
      </div>
    </header>
  );
}
