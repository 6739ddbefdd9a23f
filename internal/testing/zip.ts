/** What an outside reader finds in a ZIP file. Library: yauzl. */
import { buffer } from 'node:stream/consumers';
import { crc32 } from 'node:zlib';
import { openPromise } from 'yauzl';

/**
 * Names of the files inside, each unpacked and held against its length and checksum.
 * @throws when the file is no ZIP file, or one of those inside is damaged
 */
export async function readZip(path: string): Promise<readonly string[]> {
  const archive = await openPromise(path, { lazyEntries: true, autoClose: false });
  const names: string[] = [];
  for await (const entry of archive.eachEntry()) {
    const content = await buffer(await archive.openReadStreamPromise(entry));
    if (crc32(content) !== entry.crc32) throw new Error(`${entry.fileName} is damaged`);
    names.push(entry.fileName);
  }
  archive.close();
  return names;
}
