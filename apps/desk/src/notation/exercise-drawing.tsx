/** An exercise drawn on one line, or on five where several voices play. */

import {
  barPart,
  type Exercise,
  handsOf,
  isSticked,
  type Meter,
  type NotatedBar,
  notateBar,
  strokesOfBar,
} from '@shedbook/core';
import { memo, type ReactNode } from 'react';
import { Ball } from './ball.tsx';
import { BarDrawing } from './bar-drawing.tsx';
import { type BarLayout, layOutBar, type StaffKind } from './layout.ts';
import styles from './notation.module.css';
import { Notation } from './notation.tsx';
import { BRACKET, closesAt, hasEndings, type Repeated, RepeatSigns } from './repeat-signs.tsx';

/** The bars of an exercise, spelled. */
export function notateExercise(
  exercise: Pick<Exercise, 'parts' | 'sticking'>,
  meter: Meter,
): readonly NotatedBar[] {
  const first = exercise.parts[0];
  if (!first) return [];
  return first.pattern.bars.map((_, bar) => {
    const parts = exercise.parts.map((part, index) => {
      const { from, to } = strokesOfBar(part.pattern, bar);
      const sticking = handsOf(exercise, index)?.slice(from, to);
      return { ...barPart(part.voice, part.pattern, bar), ...(sticking ? { sticking } : {}) };
    });
    return notateBar(parts, meter);
  });
}

/** One line where one voice plays, else five. */
export function staffOf(exercise: Pick<Exercise, 'parts'>): StaffKind {
  return exercise.parts.length > 1 ? 'five lines' : 'one line';
}

/** Units left of the first bar, so that a head on 1 is not cut. */
const MARGIN = 1;

/** Height that every line of exercises shares, so that lines stand evenly. */
export function heightOf(
  layouts: readonly BarLayout[],
  counts: boolean,
): { readonly top: number; readonly height: number } {
  const top = Math.min(-62, ...layouts.map((layout) => layout.top));
  const bottom = Math.max(counts ? 34 : 22, ...layouts.map((layout) => layout.bottom));
  return { top, height: bottom - top };
}

interface BarsProps {
  readonly bars: readonly NotatedBar[];
  readonly staff: StaffKind;
  readonly sticking: boolean;
  /** Which bar of the exercise the first one is, from 0. */
  readonly firstBar?: number;
  /** Whether the last one closes with a repeat sign. */
  readonly repeats?: boolean;
  readonly hasBarLines?: boolean;
  /** The exercise whose repeats are drawn; none are where left out. */
  readonly of?: Repeated;
  /** What is drawn over a bar of the exercise, from 0. */
  readonly over?: (bar: number) => ReactNode;
}

/** Bars one after another in one picture. */
export const BarsDrawing = memo(function BarsDrawing(props: BarsProps) {
  const { bars, staff, sticking, firstBar = 0, repeats = false, hasBarLines = true, of, over } = props;
  const layouts = bars.map((bar) => layOutBar(bar, staff));
  const plain = heightOf(layouts, sticking);
  const bracket = of && hasEndings(of) ? BRACKET : 0;
  const [top, height] = [plain.top - bracket, plain.height + bracket];
  const width = layouts.reduce((sum, layout) => sum + layout.width, 0);
  let x = 0;
  return (
    <Notation viewBox={`${-MARGIN} ${top} ${width + 2 * MARGIN + 8} ${height}`}>
      {layouts.map((layout, index) => {
        const left = x;
        x += layout.width;
        return (
          <g key={left} transform={`translate(${left} 0)`}>
            <BarDrawing
              layout={layout}
              staff={staff}
              repeats={of ? closesAt(of, firstBar + index) : repeats && index === layouts.length - 1}
              hasBarLine={hasBarLines}
            />
            {of && (
              <RepeatSigns exercise={of} bar={firstBar + index} layout={layout} staff={staff} top={top + 1} />
            )}
            {over?.(firstBar + index)}
            <Ball bar={firstBar + index} left={0} right={layout.width} />
          </g>
        );
      })}
    </Notation>
  );
});

interface ExerciseDrawingProps {
  readonly exercise: Exercise;
  readonly meter: Meter;
}

/** An exercise in rows of so many bars. */
export function ExerciseRows({
  exercise,
  meter,
  abreast,
  over,
}: ExerciseDrawingProps & { readonly abreast: number } & Pick<BarsProps, 'over'>) {
  const bars = notateExercise(exercise, meter);
  const firsts = Array.from({ length: Math.ceil(bars.length / abreast) }, (_, row) => row * abreast);
  return firsts.map((first) => (
    <div key={first} className={styles.row}>
      <BarsDrawing
        bars={bars.slice(first, first + abreast)}
        staff={staffOf(exercise)}
        sticking={isSticked(exercise)}
        firstBar={first}
        of={exercise}
        {...(over ? { over } : {})}
      />
    </div>
  ));
}

/** A whole exercise in one picture. */
export function ExerciseDrawing({ exercise, meter }: ExerciseDrawingProps) {
  const bars = notateExercise(exercise, meter);
  return <BarsDrawing bars={bars} staff={staffOf(exercise)} sticking={isSticked(exercise)} of={exercise} />;
}
