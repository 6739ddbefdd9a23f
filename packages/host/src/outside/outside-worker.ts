/** The thread that reads files from elsewhere: what reads a kind is loaded with the first of it. */
import { parentPort } from 'node:worker_threads';
import type { Outside, OutsideAnswer, OutsideKind, OutsideOrder } from './outside-messages.ts';
import { readUpTo, TooLargeError } from './read-up-to.ts';

type Reader<Kind extends OutsideKind> = (
  bytes: Buffer,
  asked: Outside[Kind]['asked'],
  path: string,
) => Promise<Outside[Kind]['found']>;

const READERS: { readonly [Kind in OutsideKind]: Reader<Kind> } = {
  midi: async (bytes, { keys }) => {
    const { readMidi } = await import('@shedbook/exchange');
    return readMidi(bytes, { keys });
  },
  log: async (bytes, _, path) => {
    const { parsePracticeLog } = await import('@shedbook/coach');
    return parsePracticeLog(bytes.toString('utf8'), path);
  },
  soundFont: async (bytes, { sampleRateHz }) => {
    const { readSoundFont, SoundFontError } = await import('@shedbook/sound');
    try {
      return { sounds: readSoundFont(bytes, { sampleRateHz }) };
    } catch (error) {
      if (!(error instanceof SoundFontError)) throw error;
      return { fault: error.fact };
    }
  },
};

async function answer({ kind, path, mostBytes, asked }: OutsideOrder): Promise<OutsideAnswer> {
  const bytes = await readUpTo(path, mostBytes);
  const read = READERS[kind] as Reader<OutsideKind>;
  return { kind: 'read', found: await read(bytes, asked as never, path) };
}

function faultOf(error: Error & { readonly code?: unknown }): OutsideAnswer {
  if (error instanceof TooLargeError) return { kind: 'too-large' };
  // What the system says has a number, too.
  if ('errno' in error && typeof error.code === 'string') return { kind: 'unreadable', code: error.code };
  return { kind: 'broken', message: error.stack ?? error.message };
}

parentPort?.on('message', (order: OutsideOrder) => {
  answer(order)
    .catch(faultOf)
    .then((said) => parentPort?.postMessage(said));
});
