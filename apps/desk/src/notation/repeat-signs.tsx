/** Where repeats begin and which times an ending is for, drawn over bars. */
import { barSigns, type Exercise, isLooped } from '@shedbook/core';
import { type BarLayout, SPACE, type StaffKind } from './layout.ts';
import styles from './notation.module.css';

/** Height of an ending's bracket, in units. */
export const BRACKET = 16;

/** What of an exercise says how its bars are gone through. */
export type Repeated = Pick<Exercise, 'parts' | 'repeats'>;

/** Whether a bar (from 0) closes with a repeat sign. */
export function closesAt(exercise: Repeated, bar: number): boolean {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  return exercise.repeats ? barSigns(exercise, bar).closes !== null : bar === bars - 1 && isLooped(bars);
}

/** Whether any bar lies in an ending. */
export function hasEndings({ repeats = [] }: Repeated): boolean {
  return repeats.some(({ endings }) => endings.length > 0);
}

function Opening({ reach }: { readonly reach: number }) {
  return (
    <>
      <path className={styles.heavyLine} d={`M2 ${-reach}V${reach}`} />
      <path className={styles.barLine} d={`M6 ${-reach}V${reach}`} />
      {[-SPACE / 2, SPACE / 2].map((y) => (
        <circle key={y} cx={10} cy={y} r="2" />
      ))}
    </>
  );
}

interface RepeatSignsProps {
  readonly exercise: Repeated;
  readonly bar: number;
  readonly layout: BarLayout;
  readonly staff: StaffKind;
  /** Upper edge of the brackets, in user units of the picture. */
  readonly top: number;
}

/** The signs of one bar, its left end at x 0. */
export function RepeatSigns({ exercise, bar, layout, staff, top }: RepeatSignsProps) {
  const { opens, ending } = barSigns(exercise, bar);
  const down = top + BRACKET - 2;
  const isOpen = !ending?.ends || ending.isLast;
  return (
    <>
      {opens && <Opening reach={staff === 'one line' ? SPACE : 2 * SPACE} />}
      {ending && (
        <path
          className={styles.pen}
          strokeWidth="1.4"
          d={`${ending.begins ? `M2 ${down}V${top}` : `M0 ${top}`}H${layout.width - 4}${isOpen ? '' : `V${down}`}`}
        />
      )}
      {ending?.begins && (
        <text className={styles.time} x={7} y={down}>
          {ending.times.join(', ')}.
        </text>
      )}
    </>
  );
}
