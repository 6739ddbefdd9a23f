/** The file of a take that a student sent, opened: its sound, what is judged of it, and its report. */
import { Bpm, type FullReport, LIMBS, type Limb } from '@shedbook/core';
import type { Taken } from '@shedbook/judge';
import type { TakeFacts } from '@shedbook/routes';
import { strFromU8, unzipSync } from 'fflate';
import { isReport } from './take-in.ts';

/** A take that was opened. */
export interface OpenTake {
  /** Null for a kit, whose strokes are in the report. */
  readonly sound: Blob | null;
  readonly taken: Taken;
}

/** Media types of sound by the name that it has in the file. */
const SOUNDS = { 'take.flac': 'audio/flac', 'take.wav': 'audio/wav' } as const;

/** Bytes that a part of the file has at most: what came from outside may say anything. */
const PART_BYTES = 256 * 1024 * 1024;

function jsonIn(part: Uint8Array | undefined): unknown {
  try {
    return part ? JSON.parse(strFromU8(part)) : null;
  } catch {
    return null;
  }
}

function reportOf(value: unknown): FullReport | null {
  return isReport(value) && 'asked' in value ? (value as FullReport) : null;
}

function limbsOf(value: unknown): readonly Limb[] {
  return Array.isArray(value) ? LIMBS.filter((limb) => value.includes(limb)) : [];
}

function loopsOf(value: unknown): Taken['loops'] {
  if (!Array.isArray(value)) return [];
  return value.flatMap(({ bpm }: { readonly bpm?: unknown }) =>
    typeof bpm === 'number' && bpm > 0 ? [{ bpm: Bpm(bpm) }] : [],
  );
}

/** Opens the file. @throws Error where it is no zip */
export function openTake(bytes: Uint8Array, { exercise }: TakeFacts): OpenTake {
  const parts = unzipSync(bytes, { filter: ({ originalSize }) => originalSize <= PART_BYTES });
  const { layers, mine, loops } = (jsonIn(parts['take.json']) ?? {}) as Readonly<Record<string, unknown>>;
  const named = Object.entries(SOUNDS).flatMap(([name, type]) => {
    const part = parts[name];
    return part ? [new Blob([part as Uint8Array<ArrayBuffer>], { type })] : [];
  });
  return {
    sound: named[0] ?? null,
    taken: {
      exercise,
      layers: typeof layers === 'number' ? layers : 1,
      mine: limbsOf(mine),
      loops: loopsOf(loops),
      report: reportOf(jsonIn(parts['report.json'])),
    },
  };
}
