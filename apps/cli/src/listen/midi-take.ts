/**
 * A MIDI file of an electronic kit, and the keys of that kit, on disk.
 *
 * Conventions: what a file is, its first bytes say, not its name.
 */
import { open } from 'node:fs/promises';
import type { KitKeys, MidiTake } from '@shedbook/exchange';
import { InputError, readOutside, unreadableFile } from '@shedbook/host';
import { formatByteProblem } from '@shedbook/words';
import { refused } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { readTextFile } from '../text-file.ts';

const MIDI_MARK = 'MThd';

async function firstBytes(path: string): Promise<string> {
  const file = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(MIDI_MARK.length), 0, MIDI_MARK.length, 0);
    return buffer.toString('latin1', 0, bytesRead);
  } finally {
    await file.close();
  }
}

/** Whether a take is a MIDI file. @throws InputError when it cannot be read */
export async function isMidi(path: string): Promise<boolean> {
  const mark = await firstBytes(path).catch((error: unknown) => {
    throw unreadableFile({ path, expected: ({ take }) => take }, error);
  });
  return mark === MIDI_MARK;
}

/** A MIDI file; what was left out of it goes to the terminal. @throws InputError when nothing could be read */
export async function readMidiTake(path: string, keys: KitKeys, terminal: Speaker): Promise<MidiTake> {
  const take = await readOutside('midi', { path, expected: ({ midiTake }) => midiTake }, { keys });
  const lines = (of: typeof take.problems) => (to: Speaker['catalogue']) =>
    of.map((problem) => formatByteProblem(path, problem, to.language));
  const errors = take.problems.filter((problem) => problem.severity === 'error');
  if (errors.length > 0) throw new InputError((to) => lines(errors)(to).join('\n'));
  for (const line of lines(take.problems)(terminal.catalogue)) terminal.warn(line);
  return take;
}

/**
 * The keys of a kit from a file; none where no file is named.
 * @throws InputError with every line that is wrong.
 */
export async function readKeysFile(path: string | undefined): Promise<KitKeys> {
  if (path === undefined) return {};
  const text = await readTextFile(path, (expected) => expected.keys, `--keys: ${path}`);
  // most takes come without them, and the readers of files of notes with them
  const { readKitKeys } = await import('@shedbook/exchange');
  const { keys, problems } = readKitKeys(text);
  if (problems.length === 0) return keys;
  const errors = problems.map(({ line, found, fault, near }) =>
    refused(`${path}:${line}`, `"${found}"`, (expected) => expected.kitKeys[fault], near),
  );
  throw new InputError((to) => errors.map((error) => error.say(to)).join('\n'));
}
