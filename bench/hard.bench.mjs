/**
 * Hard use: hostile files of every kind that is read, grown from good ones, each under a limit of time and memory.
 *
 * `SHEDBOOK_HARD_SECONDS`, `SHEDBOOK_HARD_INPUTS` and `SHEDBOOK_HARD_SEED` set the budget; what went wrong is printed
 * with its kind and seed, and `node internal/testing/hard/child.mjs KIND SEED` reads it again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { killRounds } from '../internal/testing/hard/kill-rounds.mjs';
import { chance } from '../internal/testing/hard/random.mjs';
import { LIMITS, readHard } from '../internal/testing/hard/watch.mjs';

export const name = 'hard';

const OUTCOMES = ['accepted', 'refused', 'ours', 'hung', 'memory'];

function setting(key, otherwise) {
  return Number(process.env[`SHEDBOOK_HARD_${key}`] ?? otherwise);
}

/** The rows of a kind: what became of its inputs, and the slowest of them. */
function rowsOf(kind, results) {
  const count = (outcome) => results.filter((each) => each.outcome === outcome).length;
  const slowest = Math.max(0, ...results.map(({ cpuMs }) => cpuMs ?? 0));
  return [
    ...OUTCOMES.filter(
      (outcome) => outcome !== 'refused' && (outcome === 'accepted' || count(outcome) > 0),
    ).map((outcome) => ({
      what: `${kind}: ${outcome} of ${results.length}`,
      value: count(outcome),
      unit: '',
    })),
    { what: `${kind}: the slowest`, value: slowest, unit: 'ms' },
  ];
}

/** A server killed two hundred times under several writers, in a quarter of the time that there is. */
async function killRows(seed, seconds) {
  const dataDir = mkdtempSync(join(tmpdir(), 'shedbook-hard-'));
  try {
    const { next } = chance(seed);
    const until = performance.now() + seconds * 1000;
    const { rounds, acknowledged, lost } = await killRounds({
      dataDir,
      rounds: 200,
      writers: 4,
      next,
      until,
    });
    for (const each of lost) console.log(`  lost: ${each}`);
    return [
      { what: 'killed while four and four wrote', value: rounds, unit: 'times' },
      { what: `lost of ${acknowledged} writes that were acknowledged`, value: lost.length, unit: '' },
    ];
  } finally {
    rmSync(dataDir, { recursive: true, force: true });
  }
}

export async function run() {
  const seed = setting('SEED', 20_261_129);
  const seconds = setting('SECONDS', 1200);
  const budget = { seed, seconds: (3 / 4) * seconds, inputs: setting('INPUTS', 100_000) };
  console.log(
    `  seed ${seed}, at most ${LIMITS.cpuSeconds} s of the processor and ${LIMITS.memoryMb} MB each`,
  );
  const results = await readHard({ ...budget, processes: Math.max(1, availableParallelism() - 1) });
  for (const { kind, seed: of, outcome, why = '', cpuMs, peakMb } of results)
    if (['ours', 'hung', 'memory'].includes(outcome))
      console.log(
        `  ${outcome}: ${kind} ${of} (${Math.round(cpuMs ?? 0)} ms, ${Math.round(peakMb ?? 0)} MB) ${why}`,
      );
  const kinds = [...new Set(results.map(({ kind }) => kind))];
  const count = (outcome) => results.filter((each) => each.outcome === outcome).length;
  return [
    ...(await killRows(seed, seconds / 4)),
    ...kinds.flatMap((kind) =>
      rowsOf(
        kind,
        results.filter((each) => each.kind === kind),
      ),
    ),
    ...OUTCOMES.map((outcome) => ({
      what: `all: ${outcome} of ${results.length}`,
      value: count(outcome),
      unit: '',
    })),
  ];
}
