/**
 * A take as one file for the teacher: the sound, the report, and what was played.
 *
 * Conventions: a zip; `take.wav` or `take.flac` (16 bits, mono), `report.json` as the listening program writes it, `report.svg` the
 * same as a page to look at, `take.json`.
 * Source: PKWARE APPNOTE 6.3 (stored entries), written by fflate.
 */
import { exerciseLabel } from '@shedbook/core';
import { strToU8, zipSync } from 'fflate';
import type { Take } from './take.ts';

/** A file name without what file systems refuse. */
function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[^\w ]/g, '')
    .trim()
    .replace(/\s+/g, '-')
    .toLowerCase();
}

/**
 * The name of the file.
 * @example fileNameOf({ lessonTitle: 'First Swing', number: 7, startedAt: '2026-11-25T18:30:00+01:00' }) // 'first-swing-7-20261125-183000.zip'
 */
export function fileNameOf(take: Take): string {
  const when = take.startedAt.slice(0, 19).replace(/[-:]/g, '').replace('T', '-');
  return `${plain(take.lessonTitle) || 'take'}-${take.number === null ? 'time' : exerciseLabel(take.number)}-${when}.zip`;
}

function json(value: unknown): Uint8Array {
  return strToU8(`${JSON.stringify(value, null, 2)}\n`);
}

/** The first day that a zip can tell, so that the same take is the same file whenever it is made. */
const NO_DATE = new Date(1980, 0, 1);

/** The sound of a take as it goes into the file. */
export interface PackedSound {
  readonly name: 'take.wav' | 'take.flac';
  readonly content: Uint8Array;
}

/** A recording as it is. */
export async function asRecorded(audio: Blob): Promise<PackedSound> {
  return { name: 'take.wav', content: new Uint8Array(await audio.arrayBuffer()) };
}

/** The bytes of the file. @param page the report as a page, where there is one */
export function packTake(
  take: Take,
  sound: PackedSound | null,
  page: string | null,
): Uint8Array<ArrayBuffer> {
  const { report, ...facts } = take;
  const files: Record<string, Uint8Array> = { 'take.json': json(facts) };
  if (report) files['report.json'] = json(report);
  if (page !== null) files['report.svg'] = strToU8(page);
  if (sound) files[sound.name] = sound.content;
  return zipSync(files, { level: 0, mtime: NO_DATE }) as Uint8Array<ArrayBuffer>;
}
