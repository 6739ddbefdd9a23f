/** The vocabulary: every cell of the lesson's subdivisions, drawn; those in use are pressed. */
import { type Cell, cell, type Lesson, notateBar, type Subdivision } from '@shedbook/core';
import { type DeskWords, sayPattern } from '@shedbook/words';
import { BarsDrawing } from '../notation/exercise-drawing.tsx';
import { useWords } from '../words/words.tsx';
import { OwnCell } from './own-cell.tsx';
import styles from './vocabulary.module.css';

interface VocabularyProps {
  readonly lesson: Lesson;
  readonly onToggle: (cell: string) => void;
}

/** Slots that are offered whole: of sixths there are too many cells to look through. */
const WHOLE_AT_MOST = 4;

/** How the beats of a lesson can be divided, by its meter and feel. */
function divisionsOf({ meter, feel }: Lesson): readonly Subdivision[] {
  if (meter.compound) return [3];
  if (feel.kind === 'even' || (feel.kind === 'ratio' && feel.of === 'sixteenths')) return [2, 4];
  return [3, 2];
}

/** Every cell of plain strokes in so many slots, the emptiest first. */
function everyCell(slots: number): readonly string[] {
  const texts = Array.from({ length: 2 ** slots }, (_, bits) =>
    Array.from({ length: slots }, (_slot, slot) => ((bits >> slot) & 1 ? 'x' : '.')).join(''),
  );
  const strokes = (text: string) => text.replaceAll('.', '').length;
  return texts.sort((a, b) => strokes(a) - strokes(b) || (a < b ? 1 : -1));
}

/** Cells on offer by their slots: all of the lesson's feel and meter, and its own. */
function cellsOnOffer(lesson: Lesson): ReadonlyMap<number, readonly Cell[]> {
  const own = lesson.vocabulary.map((each) => each.cell);
  const sizes = [...new Set<number>([...divisionsOf(lesson), ...own.map((each) => each.marks.length)])];
  return new Map(
    sizes.map((slots) => {
      const plain = slots <= WHOLE_AT_MOST ? everyCell(slots) : [];
      const mine = own.filter((each) => each.marks.length === slots).map((each) => each.text);
      return [slots, [...new Set([...plain, ...mine])].map(cell)];
    }),
  );
}

function sayCell(each: Cell, counts: DeskWords['counts']): string {
  return sayPattern(counts, { bars: [[each]] }, () => '').join('') || counts.silent;
}

/** One beat of the lesson's meter, for drawing a cell alone. */
function beatMeter(lesson: Lesson): Lesson['meter'] {
  const [beat] = lesson.meter.beats;
  return beat ? { ...lesson.meter, text: '', beats: [beat], bar: beat } : lesson.meter;
}

interface CellsProps extends VocabularyProps {
  readonly slots: number;
  readonly cells: readonly Cell[];
}

/** The cells of one division. */
function Cells({ lesson, slots, cells, onToggle }: CellsProps) {
  const words = useWords();
  const inUse = new Set(lesson.vocabulary.map((each) => each.cell.text));
  const meter = beatMeter(lesson);
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
