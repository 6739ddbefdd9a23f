/** The file of a take that a student sent, opened: its sound, what is judged of it, and its report. */
import { Bpm, type FullReport, jsonIn, LIMBS, type Limb } from '@shedbook/core';
import type { Taken } from '@shedbook/judge';
import type { TakeFacts } from '@shedbook/routes';
import type { PlayedTake, TakeLoop } from '@shedbook/stand/takes';
import { strFromU8, unzipSync } from 'fflate';
import { isReport } from './take-in.ts';

/** A take that was opened. */
export interface OpenTake {
  /** Null for a kit, whose strokes are in the report. */
  readonly sound: Blob | null;
  readonly taken: Taken;
  /** What is heard beside its model; null where the file does not say when its rounds were. */
  readonly played: PlayedTake | null;
}

/** Media types of sound by the name that it has in the file. */
const SOUNDS = { 'take.flac': 'audio/flac', 'take.wav': 'audio/wav' } as const;

/** Parts that are opened; whatever else lies in the file is left alone. */
const PARTS: ReadonlySet<string> = new Set(['take.json', 'report.json', ...Object.keys(SOUNDS)]);

/** Bytes that a part of the file has at most: what came from outside may say anything. */
const PART_BYTES = 256 * 1024 * 1024;

function reportOf(value: unknown): FullReport | null {
  return isReport(value) && 'asked' in value ? (value as FullReport) : null;
}

function limbsOf(value: unknown): readonly Limb[] {
  return Array.isArray(value) ? LIMBS.filter((limb) => value.includes(limb)) : [];
}

function loopsOf(value: unknown): Taken['loops'] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((each: { readonly bpm?: unknown } | null) => {
    const bpm = each?.bpm;
    return isNumber(bpm) && bpm > 0 ? [{ bpm: Bpm(bpm) }] : [];
  });
}

/** A round is at most so long, in seconds: what came from outside would take all memory else. */
const LONGEST_ROUND_SECONDS = 300;

/** Rounds with their times, as far as all of them have some. */
function roundsOf(value: unknown): readonly TakeLoop[] {
  if (!Array.isArray(value)) return [];
  const rounds = value.flatMap((each: Partial<TakeLoop> | null): TakeLoop[] => {
    const { startSeconds, endSeconds, bpm } = each ?? {};
    if (!isNumber(startSeconds) || !isNumber(endSeconds) || !isNumber(bpm) || bpm <= 0) return [];
    const seconds = endSeconds - startSeconds;
    return seconds > 0 && seconds <= LONGEST_ROUND_SECONDS
      ? [{ startSeconds, endSeconds, bpm: Bpm(bpm) }]
      : [];
  });
  return rounds.length === value.length ? rounds : [];
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

/** Opens the file. @throws Error where it is no zip */
export function openTake(bytes: Uint8Array, { exercise }: TakeFacts): OpenTake {
  const parts = unzipSync(bytes, {
    filter: ({ name, originalSize }) => PARTS.has(name) && originalSize <= PART_BYTES,
  });
  const textOf = (name: string) => strFromU8(parts[name] ?? new Uint8Array());
  const facts = (jsonIn(textOf('take.json')) ?? {}) as Readonly<Record<string, unknown>>;
  const { layers, mine, loops, latencySeconds } = facts;
  const named = Object.entries(SOUNDS).flatMap(([name, type]) => {
    const part = parts[name];
    return part ? [new Blob([part as Uint8Array<ArrayBuffer>], { type })] : [];
  });
  const sound = named[0] ?? null;
  const report = reportOf(jsonIn(textOf('report.json')));
  const own = { layers: typeof layers === 'number' ? layers : 1, report };
  const rounds = roundsOf(loops);
  const kind = sound ? ('audio' as const) : ('midi' as const);
  const late = sound && isNumber(latencySeconds) ? latencySeconds : 0;
  return {
    sound,
    taken: { ...own, exercise, mine: limbsOf(mine), loops: loopsOf(loops) },
    played: rounds.length > 0 ? { ...own, kind, latencySeconds: late, loops: rounds } : null,
  };
}
