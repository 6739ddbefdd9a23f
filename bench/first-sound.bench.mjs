/**
 * How long a student waits for the first sound: from the press on Play, once the page rests, until the first stroke of the
 * count-in leaves the loudspeaker, output latency included, in each engine; and the same for the next press.
 *
 * Conventions: medians of five pages. An engine that is missing is left out.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT, toolPath } from '../scripts/run.mjs';

export const name = 'first sound after Play';

/** The longest that is meant to be waited at rest, in ms. */
const MEANT_MS = 600;

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-first-sound-'));
  const env = { ...process.env, SHEDBOOK_FOUND: folder, SHEDBOOK_ENGINES: 'all' };
  spawnSync(
    toolPath('vitest'),
    ['run', '--config', 'bench/vitest.config.ts', 'bench/first-sound.measure.ts'],
    {
      cwd: ROOT,
      env,
      stdio: 'inherit',
    },
  );
  const rows = ['chromium', 'firefox', 'webkit'].flatMap((engine) => {
    const file = join(folder, `${engine}.json`);
    if (!existsSync(file)) return [];
    const { first, again, all } = JSON.parse(readFileSync(file, 'utf8'));
    const ofMeant = { ratio: first / MEANT_MS, ratioTo: 'of what is meant', note: all.join(', ') };
    return [
      { what: `${engine}: first press`, value: first, unit: 'ms', ...ofMeant },
      { what: `${engine}: the next one`, value: again, unit: 'ms' },
    ];
  });
  rmSync(folder, { recursive: true });
  return rows;
}
