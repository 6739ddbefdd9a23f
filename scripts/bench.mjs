/**
 * `npm run bench [NAME …]`: every bench (or those whose name contains a NAME), one table, in one run.
 *
 * A bench is `bench/NAME.bench.mjs` with `name` and `run()`, which gives rows of `{ what, value, unit }` and,
 * where it is set beside something else measured in the same run, `{ ratio, ratioTo }`, and a `note` where there is more.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, ensureInstalled, ROOT } from './run.mjs';

function show(row) {
  const value = `${Number(row.value.toPrecision(4))} ${row.unit}`;
  const ratio = row.ratio === undefined ? '' : `  ${Number(row.ratio.toPrecision(3))}× ${row.ratioTo}`;
  console.log(`  ${row.what.padEnd(66)} ${value.padStart(14)}${ratio}${row.note ? `  (${row.note})` : ''}`);
}

await ensureInstalled();
await build();
const wanted = process.argv.slice(2);
const files = readdirSync(join(ROOT, 'bench')).filter((file) => file.endsWith('.bench.mjs'));
for (const file of files.filter(
  (each) => wanted.length === 0 || wanted.some((name) => each.includes(name)),
)) {
  const bench = await import(pathToFileURL(join(ROOT, 'bench', file)).href);
  console.log(bench.name);
  for (const row of await bench.run()) show(row);
}
