/** A laid-out bar as SVG. It is a picture: what it says is said in words beside it. */
import type { BarLayout, StaffKind } from './layout.ts';
import { SPACE } from './layout.ts';
import styles from './notation.module.css';

interface BarDrawingProps {
  readonly layout: BarLayout;
  readonly staff: StaffKind;
  /** Whether the bar closes with a repeat sign. */
  readonly repeats: boolean;
  /** Whether it closes with a bar line at all. */
  readonly hasBarLine?: boolean;
}

const FIVE_LINES = [-2, -1, 0, 1, 2].map((line) => line * SPACE);

/** The ink of one bar, its left end at x 0 and its middle line at y 0. */
export function BarDrawing({ layout, staff, repeats, hasBarLine = true }: BarDrawingProps) {
  const reach = staff === 'one line' ? SPACE : 2 * SPACE;
  const rows = staff === 'one line' ? [0] : FIVE_LINES;
  return (
    <g>
      {rows.map((y) => (
        <path key={y} className={styles.staffLine} d={`M0 ${y}H${layout.width}`} />
      ))}
      {hasBarLine && <path className={styles.barLine} d={`M${layout.width} ${-reach}V${reach}`} />}
      {hasBarLine && repeats && (
        <>
          <path className={styles.heavyLine} d={`M${layout.width + 5} ${-reach}V${reach}`} />
          {[-SPACE / 2, SPACE / 2].map((y) => (
            <circle key={y} cx={layout.width - 5} cy={y} r="2" />
          ))}
        </>
      )}
      {layout.lines.map((line) => (
        <path
          key={`${line.x1} ${line.y1} ${line.x2} ${line.y2}`}
          className={styles.pen}
          strokeWidth={line.width}
          d={`M${line.x1} ${line.y1}L${line.x2} ${line.y2}`}
        />
      ))}
      {layout.glyphs.map(({ glyph, x, y }) => (
        <use key={`${glyph} ${x} ${y}`} href={`#glyph-${glyph}`} x={x} y={y} />
      ))}
      {layout.dots.map(({ x, y }) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r="2" />
      ))}
      {layout.rings.map(({ x, y }) => (
        <circle key={`${x} ${y}`} className={styles.ring} cx={x} cy={y} r="9" />
      ))}
      {layout.ties.map(({ x1, x2, y }) => (
        <path
          key={x1 + y}
          className={styles.ring}
          d={`M${x1 + 7} ${y + 6}Q${(x1 + x2) / 2} ${y + 14} ${x2 - 7} ${y + 6}`}
        />
      ))}
      {layout.texts.map(({ text, x, y, kind }) => (
        <text key={`${kind} ${x} ${y}`} className={styles[kind]} x={x} y={y}>
          {text}
        </text>
      ))}
    </g>
  );
}
