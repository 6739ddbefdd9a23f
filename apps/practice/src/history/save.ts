/** Saves everything of the student who practises now, and brings it back; fetched when somebody asks for it. */
import { momentNow } from '@shedbook/stand';
import { allLatencies, keepLatency } from '../device/latency-store.ts';
import { download } from '../kept/download.ts';
import { isOwn, ownSettings, rememberOwn } from '../kept/students.ts';
import { keepKit, listKits } from '../line-check/kit-store.ts';
import { keepEven, readEvens } from '../log/even-store.ts';
import { readLog, takeIn } from '../log/log-store.ts';
import { readBeside, takeApart } from '../log/take-apart.ts';
import { audioOf, keepTake, listTakes } from '../takes/take-store.ts';
import { packEverything } from './everything.ts';
import type { EverythingRead } from './read-everything.worker.ts';

/** Hands everything out as one file. @param lesson name of the sheet, for the file's */
export async function saveEverything(lesson: string): Promise<void> {
  const { log, unreadable } = await readLog();
  const takes = await listTakes().catch(() => []);
  const whole = await Promise.all(
    takes.map(async (take) => ({ take, audio: await audioOf(take.id).catch(() => null) })),
  );
  const bytes = await packEverything({
    ...{ log, unreadable: unreadable.map(({ value }) => value), takes: whole },
    ...{ timings: await allLatencies().catch(() => []), settings: ownSettings() },
    ...{ evens: await readEvens(), kits: await listKits().catch(() => []) },
  });
  download(`${lesson}-practice-${momentNow().slice(0, 10)}.zip`, bytes, 'application/zip');
}

/** What came back out of a file. */
export interface CameBack {
  readonly entries: number;
  readonly takes: number;
}

/** Takes a file of {@link saveEverything} in: nothing that is here already is lost. @throws Error where it is none */
export async function bringBack(file: Blob): Promise<CameBack> {
  const thread = new Worker(new URL('./read-everything.worker.ts', import.meta.url), { type: 'module' });
  const { log: read, takes, timings, evens, kits, settings } = await readBeside<EverythingRead>(thread, file);
  const log = await takeApart(read);
  const entries = log ? await takeIn(log) : 0;
  const known = new Set((await listTakes()).map(({ id }) => id));
  const missing = takes.filter(({ take }) => !known.has(take.id));
  for (const each of missing) await keepTake(each);
  for (const each of timings) await keepLatency(each);
  for (const each of evens) await keepEven(each);
  for (const each of kits) await keepKit(each);
  for (const [name, value] of Object.entries(settings)) if (isOwn(name)) rememberOwn(name, value);
  return { entries, takes: missing.length };
}
