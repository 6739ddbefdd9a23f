/**
 * Takes in a bucket of an S3-compatible store, instead of the folder beside the store.
 *
 * Conventions: a file has the name that it has in the folder; what is called otherwise is not ours and is left alone. A
 * bucket, or a folder of one, belongs to one store, whose mark lies in it, so that no other takes its recordings for lost.
 */
import { randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { formerTakeName, type TakeFiles, takeFileName } from '../take-files.ts';
import { SETTLED_MS } from '../whole-files.ts';
import { openBucket, shownBucket } from './bucket.ts';
import { TakesAwayError } from './takes-away.ts';

/** Names of takes. */
const TAKE_NAME = /^[0-9a-f]{64}\.zip$/;

/** Name of the file that says whose the recordings are. */
const MARK = 'shedbook-store';

/** The files of a bucket. @throws TakesAwayError where the address is none, or it is not said who asks */
export function openTakeObjects(address: string, env: NodeJS.ProcessEnv = process.env): TakeFiles {
  const bucket = openBucket(address, env);
  const ours = async () => (await bucket.list()).filter(({ name }) => TAKE_NAME.test(name));
  const tell = (fault: 'another' | 'keepsErased') => new TakesAwayError(fault, shownBucket(address), '');
  return {
    write: async (file, content) => void (await bucket.put(takeFileName(file), content)),
    read: (file) => bucket.get(takeFileName(file)),
    remove: (file) => bucket.remove(takeFileName(file)),
    nameAnew: async (files) => {
      const there = new Set((await ours()).map(({ name }) => name));
      for (const file of files) {
        const before = formerTakeName(file);
        const content = there.has(before) ? await bucket.get(before) : null;
        if (!content) continue;
        await bucket.put(takeFileName(file), content);
        await bucket.remove(before);
      }
    },
    keepOnly: async (files) => {
      const wanted = new Set(files.map(takeFileName));
      for (const { name, writtenAt } of await ours())
        if (!wanted.has(name) && Date.now() - writtenAt > SETTLED_MS) await bucket.remove(name);
    },
    names: async () => new Set((await ours()).map(({ name }) => name)),
    lay: async (folder) => {
      for (const name of readdirSync(folder)) await bucket.put(name, await readFile(join(folder, name)));
    },
    settle: async (store) => {
      const mark = await bucket.get(MARK);
      if (mark && Buffer.from(mark).toString('utf8') !== store) throw tell('another');
      if (!mark) await bucket.put(MARK, Buffer.from(store));
      const trial = `trial-${randomUUID()}`;
      const keepsErased = await bucket.put(trial, new Uint8Array());
      await bucket.remove(trial);
      if (keepsErased) throw tell('keepsErased');
    },
  };
}
