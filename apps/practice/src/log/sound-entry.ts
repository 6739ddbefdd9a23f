/** What can be read of a kept entry: one that cannot costs itself and nothing else. */
import { readMoment } from '@shedbook/coach';
import {
  Bpm,
  FAULT_KINDS,
  HEARD_BY,
  LOOP_VERDICTS,
  type LoopFault,
  type LoopRecord,
  type PracticeEntry,
  Seconds,
  VOICES,
} from '@shedbook/core';

type Unknown<T> = { readonly [Key in keyof T]?: unknown };

/** Longest entry, in seconds, and fastest loop, in quarter notes a minute: what readers of a log take. */
const LONGEST_SECONDS = 86_400;
const FASTEST_BPM = 1000;

function isText(value: unknown): value is string {
  return typeof value === 'string' && value !== '';
}

function isBetween(value: unknown, least: number, most: number): value is number {
  return typeof value === 'number' && value >= least && value <= most;
}

function isOneOf<T>(value: unknown, all: readonly T[]): value is T {
  return (all as readonly unknown[]).includes(value);
}

function faultOf(value: unknown): LoopFault | null {
  const { kind, voice, place, amount } = (value ?? {}) as Unknown<LoopFault>;
  if (!isOneOf(kind, FAULT_KINDS) || !isBetween(amount, 0, 1e6)) return null;
  if (!(voice === null || isOneOf(voice, VOICES))) return null;
  if (place === null) return { kind, voice, place, amount };
  const { bar, beat, slot } = (place ?? {}) as { bar?: unknown; beat?: unknown; slot?: unknown };
  const isPlace = [bar, beat, slot].every((each) => Number.isInteger(each) && (each as number) >= 1);
  if (!isPlace) return null;
  return { kind, voice, amount, place: { bar, beat, slot } as NonNullable<LoopFault['place']> };
}

function loopOf(value: unknown): LoopRecord | null {
  const { bpm, verdict, faults, unheard } = (value ?? {}) as Unknown<LoopRecord>;
  if (!isBetween(bpm, 1, FASTEST_BPM) || !isOneOf(verdict, LOOP_VERDICTS) || !Array.isArray(faults))
    return null;
  const read = faults.map(faultOf);
  if (read.includes(null)) return null;
  const record = { bpm: Bpm(bpm), verdict, faults: read as LoopFault[] };
  if (unheard === undefined) return record;
  const isVoices = Array.isArray(unheard) && unheard.every((each) => isOneOf(each, VOICES));
  return isVoices ? { ...record, unheard } : null;
}

/** The entry, or null where it cannot be read. */
export function soundEntry(value: unknown): PracticeEntry | null {
  const { id, device, startedAt, durationSeconds, lesson, exercise, form, heardBy, loops } = (value ??
    {}) as Unknown<PracticeEntry>;
  if (!isText(id) || !isText(device) || !isText(lesson) || !isText(form)) return null;
  if (!isText(startedAt) || readMoment(startedAt) === null) return null;
  if (!(exercise === null || isText(exercise)) || !isBetween(durationSeconds, 0, LONGEST_SECONDS))
    return null;
  if (!isOneOf(heardBy, HEARD_BY) || !Array.isArray(loops)) return null;
  const read = loops.map(loopOf);
  if (read.includes(null)) return null;
  return {
    ...{ id, device, startedAt, lesson, exercise, form, heardBy },
    ...{ durationSeconds: Seconds(durationSeconds), loops: read as LoopRecord[] },
  };
}
