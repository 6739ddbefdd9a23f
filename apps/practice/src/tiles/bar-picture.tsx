/** One bar, large: its tile, counts and hands under it, and the ball that rides it. */
import type { PackBar } from '@shedbook/pack';
import { classes } from '@shedbook/stand';
import { memo, type RefObject, useEffect, useRef } from 'react';
import { usePracticeWords } from '../page/words.tsx';
import styles from './bar-picture.module.css';
import { loadTile } from './load-tile.ts';
import { countsOf } from './places.ts';

/** Room over the notes for the ball, and under them for counts and hands, in millimetres. */
export const ROOM_MM = { above: 10, under: 5.5, hands: 4.4, side: 1.5 } as const;

const TEXT_MM = 3.5;

/** How far the bracket of an ending reaches down. */
const DOWN_MM = 3.6;

/** A hand of the written sticking. */
export interface Hand {
  readonly xMm: number;
  readonly text: string;
}

interface BarPictureProps {
  readonly bar: PackBar;
  /** Room over and under the staff that every bar of the picture has, so that staves stand level. */
  readonly overMm: number;
  readonly underMm: number;
  readonly hands: readonly Hand[];
  readonly on: 'exercise' | 'groove';
}

/** Where a tile's SVG is put once it is there. */
function useTile(path: string): RefObject<SVGGElement | null> {
  const place = useRef<SVGGElement>(null);
  useEffect(() => {
    let gone = false;
    loadTile(path).then(
      (tile) => !gone && place.current?.replaceChildren(tile.cloneNode(true)),
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [path]);
  return place;
}

/** The bracket of an ending, high over its bar. */
function Bracket({
  ending,
  widthMm,
  y,
}: {
  ending: NonNullable<PackBar['ending']>;
  widthMm: number;
  y: number;
}) {
  const { text, isOpen } = ending;
  const left = text === null ? `M0 ${y}` : `M0 ${y + DOWN_MM}V${y}`;
  return (
    <>
      <path className={styles.bracket} d={`${left}H${widthMm - 1}${isOpen ? '' : `V${y + DOWN_MM}`}`} />
      {text !== null && (
        <text className={styles.time} x={1} y={y + DOWN_MM} fontSize={TEXT_MM}>
          {text}
        </text>
      )}
    </>
  );
}

/** The picture. */
export const BarPicture = memo(function BarPicture({ bar, overMm, underMm, hands, on }: BarPictureProps) {
  const words = usePracticeWords();
  const tile = useTile(bar.tile);
  const top = bar.staffTopMm - overMm - ROOM_MM.above;
  const floor = bar.staffBottomMm + underMm;
  const handsMm = hands.length > 0 ? ROOM_MM.hands : 0;
  const height = floor + ROOM_MM.under + handsMm - top;
  const width = bar.widthMm + 2 * ROOM_MM.side;
  return (
    <svg
      className={styles.picture}
      data-part="picture"
      viewBox={`${-ROOM_MM.side} ${top} ${width} ${height}`}
      style={{ aspectRatio: `${width} / ${height}` }}
      aria-hidden="true"
      data-on={on}
      data-bar={bar.bar}
    >
      <g ref={tile} />
      {bar.ending && <Bracket ending={bar.ending} widthMm={bar.widthMm} y={top + 1} />}
      {hands.map(({ xMm, text }) => (
        <text
          key={xMm}
          className={styles.hand}
          data-part="hand"
          x={xMm}
          y={floor + ROOM_MM.hands}
          fontSize={TEXT_MM}
        >
          {text}
        </text>
      ))}
      {countsOf(words.counts, bar).map(({ xMm, text, beat, struck }, index) => (
        <text
          key={index}
          className={classes(styles.count, struck && styles.struck)}
          data-beat={beat}
          x={xMm}
          y={floor + handsMm + ROOM_MM.under - 1}
          fontSize={TEXT_MM}
        >
          {text}
        </text>
      ))}
      <circle
        className={styles.ball}
        data-part="ball"
        r="1.5"
        data-floor={bar.staffTopMm - overMm - 1.6}
        visibility="hidden"
      />
    </svg>
  );
});
