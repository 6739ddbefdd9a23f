/** One bar, large: its tile, counts and hands under it, and the ball that rides it. */
import type { PackBar } from '@shedbook/pack';
import { countsOf } from '@shedbook/playing';
import { classes } from '@shedbook/stand';
import { countUnder } from '@shedbook/words';
import { memo, type RefObject, useEffect, useRef } from 'react';
import { usePracticeWords } from '../page/words.tsx';
import styles from './bar-picture.module.css';
import { loadTile } from './load-tile.ts';
import type { Said } from './said.ts';

/** Room over the notes for the ball, and under them for counts and hands, in millimetres. */
export const ROOM_MM = { above: 10, under: 5.5, hands: 4.4, said: 5.2, side: 1.5 } as const;

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
  /** What is said of the bar; null for nothing. */
  readonly said: Said | null;
  /** Whether anything is said under any bar of the picture. */
  readonly isSaidUnder: boolean;
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
        <text className={styles.time} data-part="ending" x={1} y={y + DOWN_MM} fontSize={TEXT_MM}>
          {text}
        </text>
      )}
    </>
  );
}

interface SaidProps {
  readonly said: Said;
  readonly y: number;
}

/** The text over a bar. */
function SaidOver({ said, x, y }: SaidProps & { readonly x: number }) {
  if (said.above === null) return null;
  return (
    <text className={styles.said} data-part="above" x={x} y={y} fontSize={TEXT_MM}>
      {said.above}
    </text>
  );
}

/** Dynamics, hairpins and the text under a bar. */
function SaidUnder({ said, y }: SaidProps) {
  const last = said.marks.at(-1);
  return (
    <>
      {said.hairpins.map(({ fromMm, toMm, open: [from, to] }) => (
        <path
          key={fromMm}
          className={styles.bracket}
          data-part="hairpin"
          d={[-1, 1]
            .map((side) => `M${fromMm} ${y - 1 + side * 1.2 * from}L${toMm} ${y - 1 + side * 1.2 * to}`)
            .join('')}
        />
      ))}
      {said.marks.map(({ xMm, text }) => (
        <text key={xMm} className={styles.dynamic} data-part="dynamic" x={xMm} y={y} fontSize={4.2}>
          {text}
        </text>
      ))}
      {said.below !== null && (
        <text className={styles.said} data-part="below" x={last ? last.xMm + 5 : 0} y={y} fontSize={TEXT_MM}>
          {said.below}
        </text>
      )}
    </>
  );
}

/** The picture. */
export const BarPicture = memo(function BarPicture(props: BarPictureProps) {
  const { bar, overMm, underMm, hands, said, isSaidUnder, on } = props;
  const words = usePracticeWords();
  const tile = useTile(bar.tile);
  const top = bar.staffTopMm - overMm - ROOM_MM.above;
  const foot = bar.staffBottomMm + underMm;
  const floor = foot + (isSaidUnder ? ROOM_MM.said : 0);
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
      {said && <SaidOver said={said} y={top + TEXT_MM} x={bar.ending ? 8 : 0} />}
      {said && <SaidUnder said={said} y={foot + ROOM_MM.said - 1.4} />}
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
      {countsOf(bar.slots, (...place) => countUnder(words.counts, ...place)).map(
        ({ xMm, text, beat, struck }, index) => (
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
        ),
      )}
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
