/**
 * Signs that stand on each other on sheets, on one line and on five in turn: of 2,000 lessons that the composer writes, and
 * of 2,000 lessons of the whole grammar at random, which no teacher writes (every mark on every voice).
 * `SHEDBOOK_LESSONS`, `SHEDBOOK_SEED` and `SHEDBOOK_KINDS` (`composed`, `random`) name others.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT, toolPath } from '../scripts/run.mjs';

export const name = 'collisions of signs';

/** @param {{ kind: string, lessons: number, tiles: number, tilesWith: number, example: string }} found */
function row({ kind, lessons, tiles, tilesWith, example }) {
  const told = `${tilesWith} of ${tiles} tiles of ${lessons} lessons`;
  const note = example === '' ? told : `${told}; the first: ${example}`;
  return { what: `tiles with a collision, ${kind}`, value: tilesWith, unit: 'tiles', note };
}

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-collisions-'));
  const file = join(folder, 'found.json');
  try {
    spawnSync(
      toolPath('vitest'),
      ['run', '--config', 'bench/vitest.config.ts', 'bench/collisions.measure.ts'],
      {
        cwd: ROOT,
        env: { ...process.env, SHEDBOOK_FOUND: file },
        stdio: 'inherit',
      },
    );
    return JSON.parse(readFileSync(file, 'utf8')).map(row);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
