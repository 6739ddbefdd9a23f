/**
 * What was set for the student of a private link: as it is now, or as it was last seen where there is no network.
 *
 * Conventions: it is the server's own page that asks, so what comes is looked at only as far as it is used. It is
 * kept by the address of the link, since it says who practises.
 */
import type { PackAssignment } from '@shedbook/pack';
import type { Week } from '@shedbook/routes';
import { remember, remembered } from '@shedbook/stand';

/** Milliseconds after which what was seen last stands in for what does not come. */
const PATIENCE_MS = 4000;

/** The folder of the link: the page's own lies in it. */
export function linkFolder(): string {
  return new URL('..', window.location.href).pathname;
}

function weekIn(text: string): Week | null {
  try {
    const week = JSON.parse(text) as Partial<Week>;
    const lists = [week.lessons, week.assignments, week.passes, week.takes];
    return typeof week.student?.id === 'string' && lists.every(Array.isArray) ? (week as Week) : null;
  } catch {
    return null;
  }
}

async function fetchWeek(): Promise<string> {
  try {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const response = await fetch('../week.json', { cache: 'no-store', signal });
    return response.ok ? await response.text() : '';
  } catch {
    return '';
  }
}

function keyOfWeek(): string {
  return `week ${linkFolder()}`;
}

/** The week as it was last seen; null where it never was. */
export function lastWeek(): Week | null {
  return weekIn(remembered(keyOfWeek()) ?? '');
}

/** The week; null where it was never seen. */
export async function readWeek(): Promise<Week | null> {
  const come = await fetchWeek();
  if (weekIn(come)) remember(keyOfWeek(), come);
  return lastWeek();
}

/** What of a week is set of one lesson, as a pack has it. */
export function setOf({ assignments }: Week, lesson: string): readonly PackAssignment[] {
  return assignments.flatMap(({ exercise, pinned, note, toBpm, by, ...of }, place) =>
    of.lesson === lesson ? [{ exercise, pinned, note, toBpm, by, place }] : [],
  );
}
