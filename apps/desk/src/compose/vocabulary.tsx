/** The vocabulary: every cell of the lesson's subdivisions, drawn; those in use are pressed. */
import { CELL_NAMES, type Cell, cell, type Lesson, notateBar } from '@shedbook/core';
import { sayPattern } from '@shedbook/words';
import { BarsDrawing } from '../notation/exercise-drawing.tsx';
import { useWords } from '../words/words.tsx';
import styles from './vocabulary.module.css';

interface VocabularyProps {
  readonly lesson: Lesson;
  readonly onToggle: (cell: string) => void;
}

/** Cells on offer: the lesson's own, and the common ones of the same subdivisions. */
function cellsOnOffer(lesson: Lesson): readonly Cell[] {
  const own = lesson.vocabulary.map((each) => each.cell);
  const slots = new Set(own.map((each) => each.marks.length));
  if (slots.size === 0) slots.add(lesson.meter.compound ? 3 : 2);
  const common = Object.values(CELL_NAMES).filter((text) => slots.has(text.length as 1));
  const texts = new Set([...own.map((each) => each.text), ...common]);
  return [...texts].map(cell);
}

/** The counts of a cell on the first beat. */
function sayCell(each: Cell, silent: string): string {
  return sayPattern({ bars: [[each]] }, () => '').join('') || silent;
}

/** One beat of the lesson's meter, for drawing a cell alone. */
function beatMeter(lesson: Lesson): Lesson['meter'] {
  const [beat] = lesson.meter.beats;
  return beat ? { ...lesson.meter, text: '', beats: [beat], bar: beat } : lesson.meter;
}

/** The cells. */
export function Vocabulary({ lesson, onToggle }: VocabularyProps) {
  const words = useWords();
  const inUse = new Set(lesson.vocabulary.map((each) => each.cell.text));
  const meter = beatMeter(lesson);
  return (
    <fieldset className={styles.vocabulary}>
      <legend>{words.compose.vocabulary}</legend>
      {cellsOnOffer(lesson).map((each) => (
        <div key={each.text} className={styles.cell} data-selected={inUse.has(each.text) || undefined}>
          <BarsDrawing
            bars={[notateBar([{ voice: lesson.comping, cells: [each] }], meter)]}
            staff="one line"
            sticking={false}
            hasBarLines={false}
          />
          <button
            type="button"
            className={styles.press}
            aria-pressed={inUse.has(each.text)}
            onClick={() => onToggle(each.text)}
          >
            {each.text}
            <span className="hidden-words">: {sayCell(each, words.counts.silent)}</span>
          </button>
        </div>
      ))}
    </fieldset>
  );
}
