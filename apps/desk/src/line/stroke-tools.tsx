/** Buttons for the slot that is being written: what is struck there, and how its beat is divided. */

import {
  isAccent,
  isStruck,
  MARKS,
  type Mark,
  marksFor,
  SUBDIVISIONS,
  type Subdivision,
  strikeOf,
  type Voice,
} from '@shedbook/core';
import { Button } from '@shedbook/stand';
import { markWords } from '@shedbook/words';
import {
  divideBeat,
  held,
  type Line,
  markAt,
  type SlotPlace,
  setMark,
  toggleAccent,
} from '../edit/strokes.ts';
import { useWords } from '../words/words.tsx';
import styles from './tool-box.module.css';

/** What tools for a line are given. */
export interface LineToolsProps {
  readonly line: Line;
  readonly place: SlotPlace;
  readonly onLine: (line: Line) => void;
}

/** Every plain mark of a voice. */
function plainMarks(voice: Voice): readonly Mark[] {
  return marksFor(voice, MARKS).filter((mark) => !isAccent(mark));
}

/** The mark with its accent put on or taken off, where the voice can be played so. */
function accented(mark: Mark, voice: Voice): Mark {
  const other = toggleAccent(mark);
  return strikeOf(voice, other) ? other : 'X';
}

/** Strokes, and an accent on any of them. */
export function Strokes({ line, place, onLine, voice }: LineToolsProps & { readonly voice: Voice }) {
  const words = useWords();
  const current = markAt(line.pattern, place);
  const struck = isStruck(current);
  const set = (mark: Mark) => onLine(setMark(line, place, mark));
  const plain = (mark: Mark) =>
    mark === current || (struck && isAccent(current) && mark === current.toLowerCase());
  const marks = [...plainMarks(voice), ...(held(line, place) ? (['~'] as const) : [])];
  const buttons = marks.map((mark) => (
    <Button key={mark} className={styles.mark} aria-pressed={plain(mark)} onClick={() => set(mark)}>
      {markWords(words.marks, voice, mark)}
    </Button>
  ));
  return (
    <fieldset>
      <legend>{words.page.strokes}</legend>
      {buttons.slice(0, 2)}
      <Button
        className={styles.mark}
        aria-pressed={struck && isAccent(current)}
        onClick={() => set(accented(current, voice))}
      >
        {markWords(words.marks, voice, 'X')}
      </Button>
      {buttons.slice(2)}
    </fieldset>
  );
}

/** How the beat is divided. */
export function Division({ line, place, onLine }: LineToolsProps) {
  const words = useWords().page;
  const slots = line.pattern.bars[place.bar]?.[place.beat]?.marks.length;
  return (
    <fieldset>
      <legend>{words.divide}</legend>
      {SUBDIVISIONS.map((n) => (
        <Button
          key={n}
          className={styles.digit}
          aria-label={words.divideInto({ n })}
          aria-pressed={n === slots}
          onClick={() => onLine(divideBeat(line, place, n as Subdivision))}
        >
          {n}
        </Button>
      ))}
    </fieldset>
  );
}
