/** Strokes of a round over the heads of a bar: where each fell, and which did not come. */
import { HEAD_KINDS } from '@shedbook/core';
import { headY, type StaffKind } from '../notation/layout.ts';
import type { HeardPlace } from './heard-places.ts';
import styles from './round-beside.module.css';

/** Half a head across and down, and the ring round one that did not come, in units of the drawing. */
const HEAD = { rx: 6.2, ry: 4.6 } as const;
const RING = 9;

interface HeardMarksProps {
  /** Of one bar. */
  readonly places: readonly HeardPlace[];
  readonly staff: StaffKind;
}

function Mark({ place: { voice, x, dx }, staff }: { readonly place: HeardPlace; readonly staff: StaffKind }) {
  const y = headY(voice, staff);
  if (dx === null) return <circle className={styles.missed} data-mark="missed" cx={x} cy={y} r={RING} />;
  const at = x + dx;
  const { rx, ry } = HEAD;
  return (
    <g data-mark="struck" data-dx={Math.round(dx)}>
      <path className={styles.way} d={`M${x} ${y}H${at}M${at} ${y - 12}V${y + 12}`} />
      {HEAD_KINDS[voice] === 'x' ? (
        <path
          className={styles.cross}
          d={`M${at - ry} ${y - ry}L${at + ry} ${y + ry}M${at + ry} ${y - ry}L${at - ry} ${y + ry}`}
        />
      ) : (
        <ellipse className={styles.head} cx={at} cy={y} rx={rx} ry={ry} />
      )}
    </g>
  );
}

/** The marks of a bar. */
export function HeardMarks({ places, staff }: HeardMarksProps) {
  return (
    <g className={styles.marks}>
      {places.map((place, index) => (
        <Mark key={index} place={place} staff={staff} />
      ))}
    </g>
  );
}
