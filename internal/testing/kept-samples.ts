/** Files of every version of every document, kept as they were written: `internal/fixtures/versions/SOURCE.md`. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Where a sample lies. */
export function keptSamplePath(name: string): string {
  return fileURLToPath(new URL(`../fixtures/versions/${name}`, import.meta.url));
}

/** The text of a sample. */
export function keptSample(name: string): string {
  return readFileSync(keptSamplePath(name), 'utf8');
}
