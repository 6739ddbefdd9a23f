/** Some weeks as ink on paper: a dot a week, joined by a line; filled where it was heard, open where it was said. */
import styles from './week-picture.module.css';
import type { WeekPoint } from './weeks.ts';

/** Size of a picture, in its own units. */
const SIZE = { width: 320, height: 96, left: 44, right: 12, top: 14, bottom: 22 } as const;

interface PictureProps {
  /** What a screen reader says of it. */
  readonly label: string;
  readonly points: readonly WeekPoint[];
  /** First and last week that the picture has room for. */
  readonly weeks: readonly [number, number];
  /** Value at the foot, in bpm or ms as the points are; it may be the larger one. */
  readonly foot: number;
  /** Value at the head, in the same unit: bpm or ms. */
  readonly head: number;
  /** Values that a thin line stands at, and what is written beside it. */
  readonly lines: readonly (readonly [number, string])[];
  readonly sayWeek: (week: number) => string;
}

function scale(
  value: number,
  [from, to]: readonly [number, number],
  [low, high]: readonly [number, number],
): number {
  if (from === to) return (low + high) / 2;
  const share = Math.min(1, Math.max(0, (value - from) / (to - from)));
  return low + share * (high - low);
}

/** The picture. */
export function WeekPicture({ label, points, weeks, foot, head, lines, sayWeek }: PictureProps) {
  const across = (week: number) => scale(week, weeks, [SIZE.left + 8, SIZE.width - SIZE.right - 8]);
  const up = (value: number) => scale(value, [foot, head], [SIZE.height - SIZE.bottom, SIZE.top]);
  const way = points.map(({ week, value }) => `${across(week).toFixed(1)},${up(value).toFixed(1)}`).join(' ');
  const [first, last] = weeks;
  return (
    <svg
      className={styles.picture}
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={label}
    >
      {lines.map(([value, text]) => (
        <g key={text}>
          <line
            className={styles.rule}
            x1={SIZE.left}
            x2={SIZE.width - SIZE.right}
            y1={up(value)}
            y2={up(value)}
          />
          <text className={styles.value} x={SIZE.left - 6} y={up(value) + 4}>
            {text}
          </text>
        </g>
      ))}
      <polyline className={styles.way} points={way} />
      {points.map(({ week, value, isHeard }) => (
        <circle
          key={week}
          className={isHeard ? styles.heard : styles.said}
          cx={across(week)}
          cy={up(value)}
          r="4.5"
        />
      ))}
      <text className={styles.week} x={across(first)} y={SIZE.height - 4}>
        {sayWeek(first)}
      </text>
      {last !== first && (
        <text className={styles.week} x={across(last)} y={SIZE.height - 4}>
          {sayWeek(last)}
        </text>
      )}
    </svg>
  );
}
