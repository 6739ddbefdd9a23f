import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { constants, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parsePracticeLog } from '@shedbook/coach';
import { Hertz } from '@shedbook/core';
import { readMidi } from '@shedbook/exchange';
import { readSoundFont } from '@shedbook/sound';
import { CLI } from '@shedbook/words';
import { expect, it, onTestFinished } from 'vitest';
import { smallSoundFont } from '../../../../internal/testing/hard/sound-font.mjs';
import { InputError, reasonOf } from '../input-error.ts';
import { readOutside } from './read-outside.ts';

/** A folder that is gone when the test ends. */
function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'shedbook-outside-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

function fileOf(content: Uint8Array | string): string {
  const path = join(folder(), 'file');
  writeFileSync(path, content);
  return path;
}

/** What is said of a file, in English and in German. */
async function refusalOf(reading: Promise<unknown>): Promise<readonly [string, string]> {
  const error = await reading.then(
    () => new Error('it was read'),
    (thrown: unknown) => thrown,
  );
  if (!(error instanceof InputError)) throw error;
  return [error.say(CLI.en), error.say(CLI.de)];
}

const midi = (path: string, limits = {}) =>
  readOutside('midi', { path, expected: ({ midiTake }) => midiTake, limits }, { keys: {} });
const log = (path: string, limits = {}, signal?: AbortSignal) =>
  readOutside('log', { path, expected: (words) => words.log, limits, ...(signal && { signal }) }, {});

// standard: Standard MIDI Files 1.0: a header, and a track with one stroke of the snare (General MIDI key 38)
const NOTE = '00 99 26 64 60 89 26 00 00 ff 2f 00';
const STROKE = Buffer.from(
  `4d546864 00000006 0000 0001 0060 4d54726b 0000000c ${NOTE}`.replaceAll(' ', ''),
  'hex',
);

it('[HO5000] reads in a thread what the readers themselves read', async () => {
  const take = await midi(fileOf(STROKE));
  expect(take).toEqual(readMidi(STROKE));
  expect(take.notes).toHaveLength(1);
  const text = '{"version": 1, "entries": [7], "removed": []}';
  const path = fileOf(text);
  expect(await log(path)).toEqual(parsePracticeLog(text, path));
  const font = Uint8Array.from(smallSoundFont());
  const sampleRateHz = Hertz(22_050);
  const file = { path: fileOf(font), expected: (words: { readonly soundFont: string }) => words.soundFont };
  const { sounds } = (await readOutside('soundFont', file, { sampleRateHz })) as { sounds: object };
  expect(sounds).toEqual(readSoundFont(font, { sampleRateHz }));
});

it('[HO5001] refuses what is too large, has no end, is a folder or is not there, and says so in either language', async () => {
  const large = fileOf('');
  // a file of three gigabytes takes no room where nothing was written into it
  truncateSync(large, 3 * 2 ** 30);
  expect(await refusalOf(midi(large))).toEqual([
    `${large}: it is larger than 8.0 MB, which is the most that is read; expected a MIDI file such as take.mid`,
    `${large}: die Datei ist größer als 8,0 MB, mehr wird nicht gelesen; erwartet eine MIDI-Datei wie take.mid`,
  ]);
  if (process.platform !== 'win32')
    expect((await refusalOf(midi('/dev/zero')))[0]).toContain('larger than 8.0 MB');
  const inside = join(folder(), 'folder');
  mkdirSync(inside);
  expect((await refusalOf(midi(inside)))[1]).toBe(
    `${inside}: das ist ein Ordner; erwartet eine MIDI-Datei wie take.mid`,
  );
  expect((await refusalOf(log(join(inside, 'none'))))[1]).toContain(
    'gibt es nicht; erwartet ein Übeprotokoll',
  );
});

it('[HO5001] gives up what takes too long or is not waited for, and reads the next', async () => {
  const entries = Array.from({ length: 200_000 }, () => '{"id":7}');
  const slow = fileOf(`{"version": 1, "entries": [${entries}], "removed": []}`);
  expect((await refusalOf(log(slow, { processorMs: 200 })))[0]).toContain('in the time and memory');
  await expect(log(slow, {}, AbortSignal.timeout(50))).rejects.toThrow('nobody waits');
  expect((await midi(fileOf(STROKE))).notes).toHaveLength(1);
});

it('[HO5002] has words in each language for what systems say', () => {
  const codes = Object.keys(CLI.en.words.reasons);
  // standard: POSIX.1-2017, <errno.h>, as this system numbers it
  expect(Object.keys(constants.errno)).toEqual(expect.arrayContaining(codes));
  expect(codes).toEqual(
    expect.arrayContaining([
      'ENOENT',
      'EISDIR',
      'EACCES',
      'EPERM',
      'EROFS',
      'ENOSPC',
      'EDQUOT',
      'EMFILE',
      'EIO',
    ]),
  );
  for (const code of codes) {
    const [en, de] = [reasonOf({ code, message: code }, CLI.en), reasonOf({ code, message: code }, CLI.de)];
    expect(en).not.toBe(de);
    expect(`${en}${de}`).not.toContain(code);
  }
  // what Node itself says is English, so its name stands in the clause
  const odd = { code: 'ERR_FS_FILE_TOO_LARGE', message: 'File size (3000000000) is greater than 2 GiB' };
  expect(reasonOf(odd, CLI.de)).toBe('das System lehnt es ab (ERR_FS_FILE_TOO_LARGE)');
});
