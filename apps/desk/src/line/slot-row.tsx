/** One row of a line that is being written: its notation, and over it a place to press for every slot. */

import { isStruck, type NotatedBar, type Pattern, type Voice } from '@shedbook/core';
import { countOf, countUnder, markWords } from '@shedbook/words';
import { markAt, type SlotPlace } from '../edit/strokes.ts';
import { BarLoop } from '../hear/bar-loop.tsx';
import { Ball } from '../notation/ball.tsx';
import { BarDrawing } from '../notation/bar-drawing.tsx';
import { type BarLayout, BEAT_LEAD, beatEdges, type StaffKind, slotX } from '../notation/layout.ts';
import { Notation } from '../notation/notation.tsx';
import { useWords } from '../words/words.tsx';
import type { Row } from './rows.ts';
import styles from './slot-row.module.css';
import { isSame } from './slots.ts';

interface SlotRowProps {
  readonly bar: number;
  readonly notated: NotatedBar;
  readonly layout: BarLayout;
  readonly row: Row;
  /** Width as a share of the widest row of the bar. */
  readonly share: number;
  readonly staff: StaffKind;
  /** Upper end of the drawing, in tenths of a staff space from the middle line. */
  readonly top: number;
  /** Height of the drawing, in tenths of a staff space. */
  readonly height: number;
  readonly pattern: Pattern;
  readonly voice: Voice;
  /** Whether the bar closes with a repeat sign. */
  readonly repeats: boolean;
  readonly active: SlotPlace | null;
  readonly onPress: (place: SlotPlace) => void;
  readonly onFocus: (place: SlotPlace) => void;
  /** Number of the exercise where its bars can be looped one by one. */
  readonly loops?: number | undefined;
}

function slotsOfRow(pattern: Pattern, bar: number, row: Row): readonly SlotPlace[] {
  const cells = pattern.bars[bar] ?? [];
  return cells
    .slice(row.fromBeat, row.toBeat)
    .flatMap((cell, index) => cell.marks.map((_, slot) => ({ bar, beat: row.fromBeat + index, slot })));
}

/** The row. */
export function SlotRow(props: SlotRowProps) {
  const { bar, notated, layout, row, staff, top, height, pattern, voice, active } = props;
  const words = useWords();
  const edges = beatEdges(notated.meter);
  const span = row.right - row.left;
  const ends = row.toBeat === edges.length - 1;
  return (
    <div
      className={styles.row}
      style={props.share < 1 ? { inlineSize: `${props.share * 100}%` } : undefined}
      data-loops={props.loops !== undefined || undefined}
    >
      {props.loops !== undefined && row.fromBeat === 0 && (
        <div className={styles.loop}>
          <BarLoop exercise={props.loops} bar={bar} />
        </div>
      )}
      <Notation viewBox={`${row.left - 1} ${top} ${span + 2} ${height}`}>
        <BarDrawing layout={layout} staff={staff} repeats={props.repeats} />
        <Ball bar={bar} left={row.left} right={ends ? row.right : (edges[row.toBeat] ?? row.right)} />
      </Notation>
      <div className={styles.slots}>
        {slotsOfRow(pattern, bar, row).map((place) => {
          const slots = pattern.bars[bar]?.[place.beat]?.marks.length ?? 1;
          const width = ((edges[place.beat + 1] ?? 0) - (edges[place.beat] ?? 0)) / slots;
          const center = slotX(edges, place.beat, place.slot / slots);
          const left = Math.max(0, center - Math.min(width / 2, BEAT_LEAD) - row.left);
          const mark = markAt(pattern, place);
          const where = countOf(words.counts, place.beat, place.slot, slots);
          return (
            <button
              key={`${place.beat} ${place.slot}`}
              type="button"
              className={styles.slot}
              data-slot={`${bar} ${place.beat} ${place.slot}`}
              data-on-beat={place.slot === 0 || undefined}
              style={{ insetInlineStart: `${(left / span) * 100}%`, inlineSize: `${(width / span) * 100}%` }}
              aria-pressed={isStruck(mark)}
              aria-label={words.page.slot({ where, what: markWords(words.marks, voice, mark) })}
              tabIndex={isSame(active, place) ? 0 : -1}
              onClick={() => props.onPress(place)}
              onFocus={() => props.onFocus(place)}
            >
              <span aria-hidden="true">{countUnder(words.counts, place.beat, place.slot, slots)}</span>
            </button>
          );
        })}
      </div>
    </div>
  );
}
