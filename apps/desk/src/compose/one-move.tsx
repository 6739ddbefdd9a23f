/** A page for one move between cells that does not go yet. */
import type { Lesson } from '@shedbook/core';
import { Button, Select } from '@shedbook/stand';
import { useState } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { Composer } from './use-composer.ts';

interface OneMoveProps {
  readonly lesson: Lesson;
  readonly composer: Composer;
}

interface CellSelectProps {
  readonly label: string;
  readonly cells: readonly string[];
  readonly value: string;
  readonly onChange: (cell: string) => void;
}

function CellSelect({ label, cells, value, onChange }: CellSelectProps) {
  return (
    <Select label={label} value={value} onChange={({ target }) => onChange(target.value)}>
      {cells.map((each) => (
        <option key={each} value={each}>
          {each}
        </option>
      ))}
    </Select>
  );
}

/** From which cell to which, and asking for a page that has the move in every bar. */
export function OneMove({ lesson, composer }: OneMoveProps) {
  const words = useWords().compose;
  const cells = lesson.vocabulary.map((each) => each.cell.text);
  const [chosen, setChosen] = useState({ from: '', to: '' });
  const among = (text: string, at: number) => (cells.includes(text) ? text : (cells.at(at) ?? ''));
  const [from, to] = [among(chosen.from, -1), among(chosen.to, 0)];
  const again = composer.ask?.ask === 'move' ? composer.ask.again + 1 : 0;
  if (cells.length === 0) return null;
  return (
    <details className={styles.second} data-part="one-move">
      <summary>{words.oneMove}</summary>
      <div className={styles.opened}>
        <p>{words.oneMoveLead}</p>
        <CellSelect
          label={words.moveFrom}
          cells={cells}
          value={from}
          onChange={(cell) => setChosen({ from: cell, to })}
        />
        <CellSelect
          label={words.moveTo}
          cells={cells}
          value={to}
          onChange={(cell) => setChosen({ from, to: cell })}
        />
        <Button onClick={() => composer.propose({ ask: 'move', from, to, again })}>
          {words.proposePass}
        </Button>
      </div>
    </details>
  );
}
