/**
 * Where the accents of a stem stand.
 *
 * Conventions: the head at the outer side of a stem (the highest where stems go up, the lowest where they go down) has
 * its accent there, over or under everything; any other head of the stem has it beside itself, at the stem, so that an
 * accent of the snare is not read for the ride too.
 * Source: ours: published drum set notation puts one accent over a stem and leaves open which hand it is for.
 */
import { type NotatedEvent, type NotatedHead, STAFF_POSITIONS } from '@shedbook/core';

/** The heads of a stem that have an accent, by where it stands. */
export interface Accents {
  readonly outside: readonly NotatedHead[];
  readonly beside: readonly NotatedHead[];
}

/** Where each accent of a stem stands. */
export function accentsOf({ heads }: NotatedEvent, stems: 'up' | 'down'): Accents {
  const places = heads.map(({ voice }) => STAFF_POSITIONS[voice]);
  const outer = stems === 'up' ? Math.max(...places) : Math.min(...places);
  const accented = heads.filter(({ accent }) => accent);
  const isOutside = ({ voice }: NotatedHead) => STAFF_POSITIONS[voice] === outer;
  return { outside: accented.filter(isOutside), beside: accented.filter((head) => !isOutside(head)) };
}

/** Id of the accent beside a head. */
export function accentId(headId: string): string {
  return `${headId}-accent`;
}
