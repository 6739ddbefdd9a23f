/** An exercise as large as the room allows, its beats counted under the notes. */

import { type Exercise, isSticked, type Meter, type NotatedBar } from '@shedbook/core';
import { memo, useMemo, useRef } from 'react';
import { Ball } from '../notation/ball.tsx';
import { BarDrawing } from '../notation/bar-drawing.tsx';
import { notateExercise, staffOf } from '../notation/exercise-drawing.tsx';
import { BEAT_LEAD, beatEdges, layOutBar, type StaffKind } from '../notation/layout.ts';
import { Notation } from '../notation/notation.tsx';
import { BRACKET, closesAt, hasEndings, RepeatSigns } from '../notation/repeat-signs.tsx';
import { closeQuarter, fitRows, type RoomRow, rowWidth } from './fit-rows.ts';
import styles from './room-drawing.module.css';
import { useSize } from './use-size.ts';

interface RoomDrawingProps {
  readonly exercise: Exercise;
  readonly meter: Meter;
}

/** Height of a line of texts over or under the bars, in units. */
const TEXT = 15;

/** Height of the counts' line under the ink, in units. */
const COUNTS = 18;

/** How far a sixteenth rest on the line reaches down, in units. Source: Leland's outline. */
const LOWEST_REST = 22;

interface RowDrawingProps {
  readonly exercise: Exercise;
  readonly row: RoomRow;
  readonly notated: readonly NotatedBar[];
  readonly staff: StaffKind;
  readonly edges: readonly number[];
  readonly quarterWidth: number;
  readonly top: number;
  readonly height: number;
  readonly scale: number;
}

/** Texts of the exercise over and under a bar. */
function BarTexts({
  exercise,
  bar,
  top,
  foot,
}: Pick<RowDrawingProps, 'exercise' | 'top'> & { readonly bar: number; readonly foot: number }) {
  const above = exercise.above?.[bar] ?? null;
  const below = exercise.below?.[bar] ?? null;
  return (
    <>
      {above !== null && (
        <text className={styles.said} data-part="above" x={2} y={top + TEXT - 3}>
          {above}
        </text>
      )}
      {below !== null && (
        <text className={styles.said} data-part="below" x={2} y={foot}>
          {below}
        </text>
      )}
    </>
  );
}

/** The counts of the beats in one row of one bar. */
function Counts({ row, edges, y }: Pick<RowDrawingProps, 'row' | 'edges'> & { readonly y: number }) {
  const beats = Array.from({ length: row.toBeat - row.fromBeat }, (_, i) => row.fromBeat + i);
  return beats.map((beat) => (
    <text key={beat} className={styles.count} x={(edges[beat] ?? 0) + BEAT_LEAD} y={y}>
      {beat + 1}
    </text>
  ));
}

function RowDrawing(props: RowDrawingProps) {
  const { exercise, row, notated, staff, edges, quarterWidth, top, height, scale } = props;
  const width = rowWidth(row, edges);
  const left = edges[row.fromBeat] ?? 0;
  const right = row.toBeat === edges.length - 1 ? Number.MAX_SAFE_INTEGER : (edges[row.toBeat] ?? 0);
  let x = -left;
  return (
    <Notation
      className={styles.row}
      viewBox={`-1 ${top} ${width + 1} ${height}`}
      style={{ inlineSize: `${(width + 1) * scale}px`, blockSize: `${height * scale}px` }}
    >
      {notated.slice(row.fromBar, row.toBar).map((each, index) => {
        const bar = row.fromBar + index;
        const layout = layOutBar(each, staff, 'start', { quarterWidth, span: row, liftsFlags: true });
        const shift = x;
        x += layout.width;
        return (
          <g key={bar} transform={`translate(${shift} 0)`}>
            <BarDrawing layout={layout} staff={staff} repeats={closesAt(exercise, bar)} />
            <RepeatSigns
              exercise={exercise}
              bar={bar}
              layout={layout}
              staff={staff}
              top={top + 1 + (exercise.above ? TEXT : 0)}
            />
            {row.fromBeat === 0 && (
              <BarTexts exercise={exercise} bar={bar} top={top} foot={top + height - COUNTS - 2} />
            )}
            <Counts row={row} edges={edges} y={top + height - 4} />
            <Ball bar={bar} left={left} right={right} quarterWidth={quarterWidth} />
          </g>
        );
      })}
    </Notation>
  );
}

/** The drawing. */
export const RoomDrawing = memo(function RoomDrawing({ exercise, meter }: RoomDrawingProps) {
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const drawn = useMemo(() => {
    const staff = staffOf(exercise);
    const quarterWidth = closeQuarter(
      exercise.parts.map((part) => part.pattern),
      meter,
    );
    const notated = notateExercise(exercise, meter);
    const layouts = notated.map((bar) => layOutBar(bar, staff, 'start', { quarterWidth, liftsFlags: true }));
    const over = (hasEndings(exercise) ? BRACKET : 0) + (exercise.above ? TEXT : 0);
    const under = exercise.below ? TEXT : 0;
    const top = Math.min(...layouts.map((layout) => layout.top)) - over;
    const lowest = isSticked(exercise) ? 30 : LOWEST_REST;
    const bottom = Math.max(lowest, ...layouts.map((layout) => layout.bottom));
    return { staff, quarterWidth, notated, top, height: bottom - top + under + COUNTS };
  }, [exercise, meter]);
  const { staff, quarterWidth, notated, top, height } = drawn;
  const fit = fitRows({
    bars: notated.length,
    meter,
    quarterWidth,
    rowHeight: height,
    widthPx: size.width,
    heightPx: size.height,
  });
  return (
    <div className={styles.exercise} data-exercise={exercise.number} ref={frame}>
      {fit.scale > 0 &&
        fit.rows.map((row) => (
          <RowDrawing
            key={`${row.fromBar} ${row.fromBeat}`}
            exercise={exercise}
            row={row}
            notated={notated}
            staff={staff}
            edges={beatEdges(meter, quarterWidth)}
            quarterWidth={quarterWidth}
            top={top}
            height={height}
            scale={fit.scale}
          />
        ))}
    </div>
  );
});
