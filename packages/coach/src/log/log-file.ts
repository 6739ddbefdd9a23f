/**
 * A practice log as a file: versioned JSON that another device, or a person, can read.
 *
 * Conventions: UTF-8 JSON, two spaces of indentation, keys in the order of the types. Reading finds every problem
 * at once, each at its line and column; a log is given only when there is no error.
 */
import {
  Bpm,
  FAULT_KINDS,
  type InputProblem,
  LOOP_VERDICTS,
  type LoopFault,
  type LoopRecord,
  PRACTICE_LOG_VERSION,
  type PracticeEntry,
  type PracticeLog,
  Seconds,
  VOICES,
  type WrittenPlace,
} from '@shedbook/core';
import { readMoment } from '../time/moment.ts';
import { type JsonNode, readJson } from './json.ts';
import type { LogFact } from './log-fact.ts';
import { EMPTY_LOG, mergeLogs } from './merge.ts';
import {
  count,
  list,
  number,
  object,
  orNull,
  plain,
  quantity,
  type Shape,
  type ShapeFault,
  text,
  word,
} from './shape.ts';

/** What came of reading a practice log. */
export interface LogReading {
  /** Null when there is an error. */
  readonly log: PracticeLog | null;
  /** In order of place. */
  readonly problems: readonly InputProblem<LogFact>[];
}

const moment = plain({ fact: 'a-moment' }, (value) =>
  typeof value === 'string' && readMoment(value) ? value : undefined,
);

const place: Shape<WrittenPlace> = object<WrittenPlace>({ bar: count, beat: count, slot: count });

const fault: Shape<LoopFault> = object<LoopFault>({
  kind: word(FAULT_KINDS),
  voice: orNull(word(VOICES)),
  place: orNull(place),
  amount: number(0, 1e6, 'amount-from'),
});

const loop: Shape<LoopRecord> = object<LoopRecord>({
  bpm: quantity(1, 1000, 'tempo-from', Bpm),
  verdict: word(LOOP_VERDICTS),
  faults: list(fault),
});

const entry: Shape<PracticeEntry> = object<PracticeEntry>({
  id: text,
  device: text,
  startedAt: moment,
  durationSeconds: quantity(0, 86_400, 'seconds-from', Seconds),
  lesson: text,
  exercise: orNull(text),
  form: text,
  heardBy: word(['ear', 'student']),
  loops: list(loop),
});

const version = plain({ fact: 'a-version-number' }, (value) =>
  Number.isSafeInteger(value) ? (value as number) : undefined,
);

const logShape: Shape<PracticeLog> = object<PracticeLog>({
  version,
  entries: list(entry),
  removed: list(text),
});

function placeOf(source: string, offset: number): { readonly line: number; readonly column: number } {
  const before = source.slice(0, offset).split('\n');
  return { line: before.length, column: (before.at(-1) as string).length + 1 };
}

/** A later version is refused before anything else is looked at: its shape is not known. */
function versionFault(node: JsonNode): ShapeFault | null {
  const at = node.kind === 'object' ? node.entries.get('version') : undefined;
  if (at?.kind !== 'plain' || typeof at.value !== 'number' || at.value === PRACTICE_LOG_VERSION) return null;
  return {
    offset: at.offset,
    path: 'version',
    code: 'wrong-value',
    found: { fact: 'version', version: at.value },
    expected: { fact: 'version', version: PRACTICE_LOG_VERSION },
    repair: at.value > PRACTICE_LOG_VERSION ? { fact: 'newer-program' } : null,
  };
}

function faultsOf(source: string): {
  readonly log: PracticeLog | null;
  readonly faults: readonly ShapeFault[];
} {
  const json = readJson(source);
  if ('fault' in json) {
    return { log: null, faults: [{ ...json.fault, path: '', code: 'wrong-value', repair: null }] };
  }
  const later = versionFault(json.node);
  if (later) return { log: null, faults: [later] };
  const faults: ShapeFault[] = [];
  const log = logShape(json.node, '', (each) => faults.push(each));
  return { log: log ?? null, faults };
}

/**
 * Reads an exported practice log.
 * @param file name for messages
 */
export function parsePracticeLog(source: string, file: string): LogReading {
  const { log, faults } = faultsOf(source);
  const problems = faults
    .toSorted((a, b) => a.offset - b.offset)
    .map(
      (each): InputProblem<LogFact> => ({
        code: each.code,
        severity: 'error',
        file,
        ...placeOf(source, each.offset),
        path: each.path,
        found: each.found,
        expected: each.expected,
        repair: each.repair,
      }),
    );
  return { log: problems.length === 0 && log ? mergeLogs(EMPTY_LOG, log) : null, problems };
}

/** The text of an exported practice log. */
export function printPracticeLog(log: PracticeLog): string {
  return `${JSON.stringify(log, null, 2)}\n`;
}
