/** Reads an input of each kind as the program does, and says what became of it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parsePracticeLog } from '@shedbook/coach';
import { Hertz, parseLesson } from '@shedbook/core';
import { importMidi, readMidi, readMusicXmlFile } from '@shedbook/exchange';
import { decodeSound, InputError } from '@shedbook/host';
import { loadSoundFontKit, SoundFontError } from '@shedbook/sound';
import { strFromU8 } from 'fflate';

const isFault = ({ severity }) => severity === 'error';
const outcome = (isRefused) => (isRefused ? 'refused' : 'accepted');

let folder = null;

/** Decodes a recording that lies on disk, as `listen` does. */
async function readSound(bytes) {
  folder ??= mkdtempSync(join(tmpdir(), 'shedbook-hard-'));
  const path = join(folder, 'take');
  writeFileSync(path, bytes);
  try {
    const { blocks, sampleRateHz } = await decodeSound(path);
    if (!(sampleRateHz > 0)) throw new Error(`a rate of ${sampleRateHz} Hz`);
    for await (const block of blocks) if (!(block instanceof Float32Array)) throw new Error('no samples');
    return 'accepted';
  } catch (error) {
    if (error instanceof InputError) return 'refused';
    throw error;
  }
}

/** Clears what reading left on disk. */
export function clearUp() {
  if (folder) rmSync(folder, { recursive: true, force: true });
  folder = null;
}

function readKit(bytes) {
  try {
    loadSoundFontKit(bytes, { sampleRateHz: Hertz(22_050) }).sound('snare');
    return 'accepted';
  } catch (error) {
    if (error instanceof SoundFontError) return 'refused';
    throw error;
  }
}

/** By kind: reads bytes and says `accepted` or `refused`; throws where the fault is ours. */
export const READERS = {
  lesson: async (bytes) => outcome(parseLesson(strFromU8(bytes), 'a.lesson.yaml').lesson === null),
  log: async (bytes) => outcome(parsePracticeLog(strFromU8(bytes), 'log.json').log === null),
  midi: async (bytes) => {
    const take = readMidi(bytes);
    importMidi(take, { barsPerExercise: 1 });
    return outcome(take.problems.some(isFault));
  },
  musicxml: async (bytes) => outcome(readMusicXmlFile(bytes, 'a.musicxml').problems.some(isFault)),
  mxl: async (bytes) => outcome(readMusicXmlFile(bytes, 'a.mxl').problems.some(isFault)),
  soundfont: async (bytes) => readKit(bytes),
  wav: readSound,
  flac: readSound,
  mp3: readSound,
  ogg: readSound,
  opus: readSound,
  webm: readSound,
};
