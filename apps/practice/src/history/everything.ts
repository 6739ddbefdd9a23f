/**
 * Everything of a student as one file, and back again: the log, takes with their sound, timings, settings.
 *
 * Conventions: a zip; `practice-log.json` as every reader of logs takes it, `takes.json`, `audio/NUMBER.wav` in the
 * order of the takes, `timings.json`, `evenness.json`, `line-checks.json`, `settings.json`, `unreadable.json` with entries that could not be read.
 * Source: PKWARE APPNOTE 6.3 (stored entries), written and read by fflate.
 */
import { printPracticeLog } from '@shedbook/coach';
import type { PracticeLog } from '@shedbook/core';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import type { KeptLatency } from '../device/latency-store.ts';
import { type KeptKit, readKeptKit } from '../line-check/kept-kit.ts';
import { type EvenStretch, isEven } from '../log/even-store.ts';
import type { Take, WholeTake } from '../takes/take.ts';

/** What there is of a student. */
export interface Everything {
  readonly log: PracticeLog;
  readonly unreadable: readonly unknown[];
  readonly takes: readonly WholeTake[];
  readonly timings: readonly KeptLatency[];
  /** How even each stretch was. */
  readonly evens: readonly EvenStretch[];
  /** What line checks told of kits. */
  readonly kits: readonly KeptKit[];
  /** Small choices by the names that they are kept under, without whose they are. */
  readonly settings: Readonly<Record<string, string>>;
}

/** The same as it comes out of a file: the log is still a text, to be read by whoever reads logs. */
export interface BroughtBack extends Omit<Everything, 'log' | 'unreadable'> {
  readonly logText: string;
}

const json = (value: unknown) => strToU8(`${JSON.stringify(value)}\n`);

/** The bytes of the file. */
export async function packEverything(all: Everything): Promise<Uint8Array<ArrayBuffer>> {
  const files: Record<string, Uint8Array> = {
    'practice-log.json': strToU8(printPracticeLog(all.log)),
    'takes.json': json(all.takes.map(({ take }) => take)),
    'timings.json': json(all.timings),
    'evenness.json': json(all.evens),
    'line-checks.json': json(all.kits),
    'settings.json': json(all.settings),
  };
  if (all.unreadable.length > 0) files['unreadable.json'] = json(all.unreadable);
  for (const [index, { audio }] of all.takes.entries()) {
    if (audio) files[`audio/${index}.wav`] = new Uint8Array(await audio.arrayBuffer());
  }
  return zipSync(files, { level: 0 }) as Uint8Array<ArrayBuffer>;
}

/** Largest file that is unpacked, in bytes: more than a device has room for. */
const MOST_BYTES = 2 ** 31;

function listOf<T>(value: unknown, isOne: (each: T) => boolean): readonly T[] {
  return Array.isArray(value) ? value.filter((each) => each !== null && isOne(each as T)) : [];
}

function isTake({ id, startedAt, loops, lesson }: Take): boolean {
  return (
    [id, startedAt, lesson].every((each) => typeof each === 'string' && each !== '') && Array.isArray(loops)
  );
}

function isTiming({ device, latencyMs }: KeptLatency): boolean {
  return typeof device === 'string' && Number.isFinite(latencyMs);
}

/** What a file of {@link packEverything} holds. @throws Error where it is no such file */
export function unpackEverything(bytes: Uint8Array): BroughtBack {
  if (bytes.length > MOST_BYTES) throw new Error('too large');
  const files = unzipSync(bytes, { filter: ({ originalSize }) => originalSize < MOST_BYTES });
  const log = files['practice-log.json'];
  if (!log) throw new Error('no practice-log.json');
  const read = (name: string): unknown => (files[name] ? JSON.parse(strFromU8(files[name])) : null);
  const all = (read('takes.json') ?? []) as readonly Take[];
  const takes = listOf<Take>(all, isTake).map((take) => {
    const sound = files[`audio/${all.indexOf(take)}.wav`];
    return { take, audio: sound ? new Blob([sound as BlobPart], { type: 'audio/wav' }) : null };
  });
  const settings = Object.entries((read('settings.json') ?? {}) as Record<string, unknown>);
  return {
    logText: strFromU8(log),
    takes,
    timings: listOf<KeptLatency>(read('timings.json'), isTiming),
    evens: listOf<EvenStretch>(read('evenness.json'), isEven),
    kits: listOf<KeptKit>(read('line-checks.json'), (each) => readKeptKit(each) !== null),
    settings: Object.fromEntries(
      settings.filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
    ),
  };
}
