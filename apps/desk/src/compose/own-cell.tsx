/** A cell of one's own, by tapping the places of a beat. */
import { cell, type Lesson, type Mark, marksFor, SUBDIVISIONS, type Subdivision } from '@shedbook/core';
import { Button, Choices } from '@shedbook/stand';
import { countOf } from '@shedbook/words';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './vocabulary.module.css';

interface OwnCellProps {
  readonly lesson: Lesson;
  readonly slots: Subdivision;
  readonly onAdd: (text: string) => void;
}

/** What a tap goes through. */
const TAPPED: readonly Mark[] = ['.', 'x', 'X', 'g'];

function silent(slots: number): readonly Mark[] {
  return Array.from({ length: slots }, () => '.');
}

/** The places, and a button that adds the cell. */
export function OwnCell({ lesson, slots: first, onAdd }: OwnCellProps) {
  const words = useWords();
  const [marks, setMarks] = useState<readonly Mark[]>(() => silent(first));
  const choices = marksFor(lesson.comping, TAPPED);
  const tap = (slot: number) => {
    const next = choices[(choices.indexOf(marks[slot] ?? '.') + 1) % choices.length] ?? '.';
    setMarks(marks.with(slot, next));
  };
  const named = { '.': words.marks.rest, x: words.marks.stroke, X: words.marks.accent, g: words.marks.ghost };
  const nameOf = (mark: Mark) => named[mark as keyof typeof named] ?? mark;
  const text = cell(marks.join('')).text;
  const isThere = lesson.vocabulary.some((each) => each.cell.text === text);
  return (
    <details className={styles.own} data-part="own-cell">
      <summary>{words.compose.ownCell}</summary>
      <div className={styles.opened}>
        <Choices
          label={words.compose.division}
          value={String(marks.length)}
          choices={SUBDIVISIONS.map((each) => [String(each), String(each)] as const)}
          onChange={(slots) => setMarks(silent(Number(slots)))}
        />
        <fieldset className={styles.places}>
          <legend>{words.compose.places}</legend>
          {marks.map((mark, slot) => (
            <Button
              key={slot}
              aria-label={`${countOf(words.counts, 0, slot, marks.length)}: ${nameOf(mark)}`}
              onClick={() => tap(slot)}
            >
              {mark === '.' ? '·' : mark}
            </Button>
          ))}
        </fieldset>
        <Button disabled={isThere} onClick={() => onAdd(text)}>
          {words.compose.addCell}
        </Button>
      </div>
    </details>
  );
}
