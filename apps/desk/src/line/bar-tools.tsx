/** Buttons for the bar that is being written: one more, the same again, one less. */

import { Button, Icon } from '@shedbook/stand';
import type { NewBar } from '../edit/bars.ts';
import { useWords } from '../words/words.tsx';

interface BarToolsProps {
  /** How many bars there are. */
  readonly bars: number;
  readonly onAdd: (how: NewBar) => void;
  readonly onRemove: () => void;
}

/** The buttons. */
export function BarTools({ bars, onAdd, onRemove }: BarToolsProps) {
  const words = useWords().page;
  return (
    <fieldset>
      <legend>{words.bars({ n: bars })}</legend>
      <Button onClick={() => onAdd('silent')}>
        <Icon name="plus" />
        {words.addBar}
      </Button>
      <Button onClick={() => onAdd('same')}>
        <Icon name="copy" />
        {words.repeatBar}
      </Button>
      <Button disabled={bars < 2} onClick={onRemove}>
        <Icon name="bin" />
        {words.removeBar}
      </Button>
    </fieldset>
  );
}
