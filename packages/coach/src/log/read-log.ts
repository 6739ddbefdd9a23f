/**
 * Reading a practice log that another device, or a person, wrote as versioned JSON.
 *
 * Conventions: reading finds every problem at once, each at its line and column, and tells the first twenty
 * thousand; a log is given only when there is no error.
 */
import {
  formatPath,
  type InputProblem,
  PRACTICE_LOG_VERSION,
  type PracticeEntry,
  type PracticeLog,
  textPlaces,
} from '@shedbook/core';
import type { core } from 'zod/mini';
import { faultsOf, type LogFault } from './fault.ts';
import { jsonOffsets, readJson } from './json.ts';
import type { LogFact } from './log-fact.ts';
import { EMPTY_LOG, mergeLogs } from './merge.ts';
import { entrySchema, logSchema } from './schema.ts';

/** What came of reading a practice log. */
export interface LogReading {
  /** Null when there is an error. */
  readonly log: PracticeLog | null;
  /** The log without the entries that have an error; null when something else has one. */
  readonly soundEntries: PracticeLog | null;
  /** In order of place. */
  readonly problems: readonly InputProblem<LogFact>[];
}

/** A later version is refused before anything else is looked at: its shape is not known. */
function versionFault(value: unknown): LogFault | null {
  const version = (value as { readonly version?: unknown } | null)?.version;
  if (typeof version !== 'number' || version === PRACTICE_LOG_VERSION) return null;
  return {
    path: ['version'],
    code: 'wrong-value',
    found: { fact: 'version', version },
    expected: { fact: 'version', version: PRACTICE_LOG_VERSION },
    repair: version > PRACTICE_LOG_VERSION ? { fact: 'newer-program' } : null,
  };
}

interface PlacedFault extends LogFault {
  /** Index of the character that it is about. */
  readonly offset: number;
}

function problemsOf(
  source: string,
  file: string,
  faults: readonly PlacedFault[],
): readonly InputProblem<LogFact>[] {
  const placeOf = textPlaces(source);
  return faults
    .toSorted((a, b) => a.offset - b.offset)
    .map(({ offset, path, code, found, expected, repair }) => ({
      code,
      severity: 'error',
      file,
      ...placeOf(offset),
      path: formatPath(path),
      found,
      expected,
      repair,
    }));
}

/** What the schema has against a log. */
interface Objections {
  /** Against the log around its entries. */
  readonly around: readonly core.$ZodIssue[];
  /** Against its entries, as many as are told. */
  readonly inside: readonly core.$ZodIssue[];
  /** Which entries it does not take, told or not. */
  readonly faulty: ReadonlySet<number>;
}

/** Faults that are told: a file of millions, which takes minutes and gigabytes to tell, is none the better for it. */
const MOST_TOLD = 20_000;

/** What the schema has against a log: entry by entry, since it cannot bear a hundred thousand issues in one list. */
function objectionsTo(value: unknown): Objections {
  const entries = (value as { readonly entries?: unknown } | null)?.entries;
  const faulty = new Set<number>();
  const inside: core.$ZodIssue[] = [];
  if (!Array.isArray(entries))
    return { around: logSchema.safeParse(value).error?.issues ?? [], inside, faulty };
  for (const [index, entry] of entries.entries()) {
    const { error } = entrySchema.safeParse(entry);
    if (!error) continue;
    faulty.add(index);
    if (inside.length < MOST_TOLD)
      for (const issue of error.issues) inside.push({ ...issue, path: ['entries', index, ...issue.path] });
  }
  const around = logSchema.safeParse({ ...(value as object), entries: [] }).error?.issues ?? [];
  return { around, inside, faulty };
}

function readValue(value: unknown): {
  readonly log: PracticeLog | null;
  readonly faults: readonly LogFault[];
} {
  const later = versionFault(value);
  if (later) return { log: null, faults: [later] };
  const { around, inside, faulty } = objectionsTo(value);
  const faults = [around, inside].flat().flatMap((issue) => faultsOf(value, issue));
  if (around.length > 0) return { log: null, faults };
  const { entries } = value as PracticeLog;
  const sound = { ...(value as PracticeLog), entries: entries.filter((_, index) => !faulty.has(index)) };
  return { log: logSchema.parse(sound), faults };
}

/** One entry of a log that was kept by itself; null where a reader of logs would refuse it. */
export function readPracticeEntry(value: unknown): PracticeEntry | null {
  return entrySchema.safeParse(value).data ?? null;
}

/**
 * Reads an exported practice log.
 * @param file name for messages
 */
export function parsePracticeLog(source: string, file: string): LogReading {
  const json = readJson(source);
  if ('fault' in json) {
    const fault = { ...json.fault, path: [], code: 'wrong-value', repair: null } as const;
    return { log: null, soundEntries: null, problems: problemsOf(source, file, [fault]) };
  }
  const { log, faults } = readValue(json.value);
  const soundEntries = log && mergeLogs(EMPTY_LOG, log);
  if (faults.length === 0) return { log: soundEntries, soundEntries, problems: [] };
  const offsetOf = jsonOffsets(source);
  const placed = faults.map((fault) => ({ ...fault, offset: offsetOf(fault.path) }));
  return { log: null, soundEntries, problems: problemsOf(source, file, placed) };
}
