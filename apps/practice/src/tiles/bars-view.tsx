/** An exercise on the stand, bar by bar, as large as there is room. */
import { type Exercise, groupBy, handsOf, handsTogether, strokesOfBar } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import { BarPicture, type Hand } from './bar-picture.tsx';
import styles from './bars-view.module.css';
import { hasUnder, saidOf } from './said.ts';

interface BarsViewProps {
  readonly bars: readonly PackBar[];
  readonly on: 'exercise' | 'groove';
  readonly exercise: Exercise | null;
}

/** The hands of one bar (from 1) over its strokes. */
function handsOver({ exercise }: BarsViewProps, bar: PackBar): readonly Hand[] {
  if (!exercise) return [];
  const all = exercise.parts.flatMap((part, index) => {
    const { from, to } = strokesOfBar(part.pattern, (bar.bar - 1) % part.pattern.bars.length);
    const own = bar.slots.filter((slot) => slot.struck && slot.voice === part.voice);
    return (handsOf(exercise, index)?.slice(from, to) ?? []).flatMap((hand, stroke) => {
      const slot = own[stroke];
      return slot ? [{ xMm: slot.xMm, at: slot.beat + slot.slot / slot.slots, hand }] : [];
    });
  });
  // Hands that strike together stand as one letter.
  return [...groupBy(all, ({ at }) => at.toFixed(6)).values()].map((together) => {
    const hand = handsTogether(together.map((each) => each.hand)) ?? 'B';
    return { xMm: together[0]?.xMm ?? 0, text: hand };
  });
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
          hands={handsOver(props, bar)}
          said={said[index] ?? null}
          isSaidUnder={isSaidUnder}
          on={on}
        />
      ))}
    </div>
  );
}
