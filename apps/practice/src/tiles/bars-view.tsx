/** An exercise on the stand, bar by bar, as large as there is room. */
import { type Exercise, handLetter, type Lesson, strokesOfBar } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import { BarPicture, type Hand } from './bar-picture.tsx';
import styles from './bars-view.module.css';
import { hasUnder, saidOf } from './said.ts';

interface BarsViewProps {
  readonly bars: readonly PackBar[];
  readonly on: 'exercise' | 'groove';
  readonly lesson: Lesson;
  readonly exercise: Exercise | null;
  /** The set-up that the teacher wrote for: hands are mirrored where the student's is another. */
  readonly writtenFor: Lesson['setUp'];
}

/** The hands of one bar (from 1) over its strokes. */
function handsOf({ exercise, lesson, writtenFor }: BarsViewProps, bar: PackBar): readonly Hand[] {
  const [part] = exercise?.parts ?? [];
  if (!exercise?.sticking || !part) return [];
  const all = part.pattern.bars.length;
  const index = (bar.bar - 1) % all;
  const { from, to } = strokesOfBar(part.pattern, index);
  const hands = exercise.sticking.slice(from, to);
  const own = bar.slots.filter((slot) => slot.struck && slot.voice === part.voice);
  const mirrored = lesson.setUp !== writtenFor;
  return hands.flatMap((hand, stroke) => {
    const xMm = own[stroke]?.xMm;
    if (xMm === undefined) return [];
    return [{ xMm, text: mirrored ? mirror(hand) : hand }];
  });
}

function mirror(hand: 'R' | 'L' | 'B'): string {
  if (hand === 'B') return hand;
  return hand === handLetter('lead hand', 'right-handed') ? 'L' : 'R';
}

/** The pictures, as many beside each other as the page has room for. */
export function BarsView(props: BarsViewProps) {
  const { bars, on } = props;
  const overMm = Math.max(...bars.map((bar) => bar.staffTopMm));
  const underMm = Math.max(...bars.map((bar) => bar.heightMm - bar.staffBottomMm));
  const said = bars.map((bar) => saidOf(props.exercise, bar));
  const isSaidUnder = said.some(hasUnder);
  return (
    <div className={styles.bars} data-bars={Math.min(4, bars.length)}>
      {bars.map((bar, index) => (
        <BarPicture
          key={bar.tile}
          bar={bar}
          overMm={overMm}
          underMm={underMm}
          hands={handsOf(props, bar)}
          said={said[index] ?? null}
          isSaidUnder={isSaidUnder}
          on={on}
        />
      ))}
    </div>
  );
}
