/** The vocabulary: every cell of the lesson's subdivisions, drawn; those in use are pressed. */
import { type Cell, type Lesson, notateBar } from '@shedbook/core';
import { type DeskWords, sayPattern } from '@shedbook/words';
import { BarsDrawing } from '../notation/exercise-drawing.tsx';
import { useWords } from '../words/words.tsx';
import { beatFor, cellsOnOffer, divisionsOf } from './cells-on-offer.ts';
import { OwnCell } from './own-cell.tsx';
import styles from './vocabulary.module.css';

interface VocabularyProps {
  readonly lesson: Lesson;
  readonly onToggle: (cell: string) => void;
}

function sayCell(each: Cell, counts: DeskWords['counts']): string {
  return sayPattern(counts, { bars: [[each]] }, () => '').join('') || counts.silent;
}

interface CellsProps extends VocabularyProps {
  readonly slots: number;
  readonly cells: readonly Cell[];
}

/** The cells of one division. */
function Cells({ lesson, slots, cells, onToggle }: CellsProps) {
  const words = useWords();
  const inUse = new Set(lesson.vocabulary.map((each) => each.cell.text));
  const meter = beatFor(lesson, slots);
  return (
    <fieldset className={styles.vocabulary}>
      <legend>{words.compose.inBeat({ n: slots })}</legend>
      {cells.map((each) => (
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
            <span className="hidden-words">: {sayCell(each, words.counts)}</span>
          </button>
        </div>
      ))}
    </fieldset>
  );
}

/** The vocabulary. */
export function Vocabulary({ lesson, onToggle }: VocabularyProps) {
  const words = useWords().compose;
  const offered = cellsOnOffer(lesson);
  return (
    <section className={styles.palette} aria-label={words.vocabulary}>
      <h3>{words.vocabulary}</h3>
      {[...offered].map(([slots, cells]) => (
        <Cells key={slots} lesson={lesson} slots={slots} cells={cells} onToggle={onToggle} />
      ))}
      <OwnCell lesson={lesson} slots={divisionsOf(lesson)[0] ?? 3} onAdd={onToggle} />
    </section>
  );
}
