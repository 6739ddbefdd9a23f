/** What is known of a kit by a line check, on disk. */
import { jsonIn } from '@shedbook/core';
import { isOfTheseWeights, type KnownKit, readKnownKit } from '@shedbook/listen';
import { refused } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { readTextFile } from '../text-file.ts';

/**
 * A kit from a file; null where no file is named, or where it was learnt with another ear, which is said.
 * @throws InputError when the file is none.
 */
export async function readLineCheck(path: string | undefined, terminal: Speaker): Promise<KnownKit | null> {
  if (path === undefined) return null;
  const text = await readTextFile(path, (expected) => expected.lineCheck, `--line-check: ${path}`);
  const kit = readKnownKit(jsonIn(text));
  if (!kit) throw refused('--line-check', path, (expected) => expected.lineCheck);
  if (isOfTheseWeights(kit)) return kit;
  terminal.warn(terminal.catalogue.words.lineCheck.again({ file: path }));
  return null;
}
