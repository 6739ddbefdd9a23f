/**
 * Beams inside one beat, and whether a tuplet needs its bracket.
 * Source: common practice: a beam joins the notes shorter than a quarter of one beat, over rests between them;
 * a tuplet whose notes are all under one beam shows its number without a bracket.
 */
import type { NotatedEvent } from './notation.ts';

function isShort(event: NotatedEvent): boolean {
  return event.value.base >= 8;
}

/** Runs of short events, trimmed to start and end with a note. */
function beamRun(events: readonly NotatedEvent[], from: number): readonly [number, number] | null {
  let end = from;
  while (end < events.length && isShort(events[end] as NotatedEvent)) end += 1;
  let first = from;
  while (first < end && events[first]?.kind === 'rest') first += 1;
  let last = end - 1;
  while (last > first && events[last]?.kind === 'rest') last -= 1;
  return last > first ? [first, last] : null;
}

/** The events of a beat with `beamed` set on every event under a beam, rests between notes included. */
export function markBeams(events: readonly NotatedEvent[]): readonly NotatedEvent[] {
  const beamed = new Set<number>();
  for (let from = 0; from < events.length; ) {
    const run = beamRun(events, from);
    if (run) for (let index = run[0]; index <= run[1]; index += 1) beamed.add(index);
    while (from < events.length && isShort(events[from] as NotatedEvent)) from += 1;
    from += 1;
  }
  return events.map((event, index) => ({ ...event, beamed: beamed.has(index) }));
}

/** Whether a tuplet of these events needs a bracket: unless one beam reaches from its first event to its last. */
export function needsBracket(events: readonly NotatedEvent[]): boolean {
  return !events.every((event) => event.beamed);
}
