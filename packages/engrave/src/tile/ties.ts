/**
 * Ties: what is held goes on from one head to the next.
 *
 * Conventions: ids are those of heads; a tie stands in the bar that it begins in. Where the head that it comes from, or
 * goes to, is on another line, half a tie stands by the bar line.
 * Source: MEI 5.1 guidelines, CMN, ties (`@startid`, `@endid`) and `lv`; common practice: a roll over beats or a bar line
 * is one row of tied notes, and a tie over the end of a line is drawn on both lines.
 */
import { escapeXml, type NotatedBar, type NotatedEvent, type NotatedHead } from '@shedbook/core';

/** The id of a head of a bar (from 0) of those that are written. */
export type IdOfHead = (bar: number, event: NotatedEvent, head: NotatedHead) => string;

interface Place {
  readonly bar: number;
  readonly id: string;
  readonly head: NotatedHead;
}

/** Heads that are tied on either side, voice by voice, in order of time. */
function tiedHeads(bars: readonly NotatedBar[], idOf: IdOfHead): readonly (readonly Place[])[] {
  const byVoice = new Map<string, Place[]>();
  bars.forEach(({ layers }, bar) => {
    const events = layers.flatMap(({ groups }) => groups.flatMap((group) => group.events));
    for (const event of events) {
      for (const head of event.heads) {
        if (!head.isHeld && !head.goesOn) continue;
        byVoice.set(head.voice, [
          ...(byVoice.get(head.voice) ?? []),
          { bar, id: idOf(bar, event, head), head },
        ]);
      }
    }
  });
  return [...byVoice.values()];
}

/** The ties that begin in a bar (from 0), as MEI. */
export function tiesOf(bars: readonly NotatedBar[], bar: number, idOf: IdOfHead): string {
  const end = (index: number) => (bars[index]?.meter.upper ?? 0) + 1;
  const id = (place: Place | undefined) => `#${escapeXml(place?.id ?? '')}`;
  return tiedHeads(bars, idOf)
    .flatMap((places) =>
      places.flatMap((from, index) => {
        if (from.bar !== bar) return [];
        const to = places[index + 1];
        const isFirst = from.head.isHeld && index === 0;
        const before = isFirst ? [`<tie endid="${id(from)}" tstamp="0"/>`] : [];
        if (!from.head.goesOn) return before;
        const on = to
          ? `<tie startid="${id(from)}" endid="${id(to)}"/>`
          : `<tie startid="${id(from)}" tstamp2="0m+${end(from.bar)}"/>`;
        return [...before, on];
      }),
    )
    .join('');
}
