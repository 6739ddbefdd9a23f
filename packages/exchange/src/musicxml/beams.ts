/**
 * Beams of one group: for each event, what its beams of each level do.
 * Source: MusicXML 4.0, element `beam`: level 1 is the eighth beam; a lone note of a level has a hook.
 */
import type { NotatedEvent } from '@shedbook/core';

/** What a beam does at a note. */
export type BeamValue = 'begin' | 'continue' | 'end' | 'forward hook' | 'backward hook';

/** How many beams a note of this value has. */
export function beamCount(base: number): number {
  return Math.max(0, Math.log2(base) - 2);
}

function levelValues(counts: readonly number[], level: number): readonly (BeamValue | null)[] {
  return counts.map((count, i) => {
    if (count < level) return null;
    const before = (counts[i - 1] ?? 0) >= level;
    const after = (counts[i + 1] ?? 0) >= level;
    if (before) return after ? 'continue' : 'end';
    if (after) return 'begin';
    return i === 0 ? 'forward hook' : 'backward hook';
  });
}

/** Runs of notes under one beam, as indices; rests under the beam are passed over. */
function beamRuns(events: readonly NotatedEvent[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  let open = false;
  events.forEach((event, i) => {
    if (!event.beamed) open = false;
    else if (event.kind === 'note') {
      if (open) runs.at(-1)?.push(i);
      else runs.push([i]);
      open = true;
    }
  });
  return runs.filter((run) => run.length > 1);
}

/** For each event its beams from level 1 up. */
export function beamValues(events: readonly NotatedEvent[]): readonly (readonly BeamValue[])[] {
  const values: BeamValue[][] = events.map(() => []);
  for (const run of beamRuns(events)) {
    const counts = run.map((i) => beamCount((events[i] as NotatedEvent).value.base));
    for (let level = 1; level <= Math.max(...counts); level += 1) {
      levelValues(counts, level).forEach((value, j) => {
        if (value) values[run[j] as number]?.push(value);
      });
    }
  }
  return values;
}
