/**
 * `npm test [OPTION …]`: installs what is missing, then types, lint, format, rooms, rules, docs and every test; options
 * are those of vitest. What could not run is named at the end with its reason; with CI=true that is a failure.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { missingPrograms, PROGRAMS, preparePath, programsOf } from '../internal/testing/programs.mjs';
import { attempt, build, ensureInstalled, ROOT, run, tool, toolPath } from './run.mjs';

/** Debian packages of programs. */
function packagesOf(programs) {
  return [...new Set(programs.map((name) => PROGRAMS[name].debian))];
}

/** Names of the programs that are still missing once what this machine allows has been installed. */
async function installPrograms() {
  const missing = await missingPrograms();
  const mayInstall =
    process.getuid?.() === 0 && (await attempt('sh', ['-c', 'command -v apt-get > /dev/null'])) === 0;
  if (missing.length === 0 || !mayInstall) return missing;
  console.log(`Installing programs that tests compare with: ${packagesOf(missing).join(' ')} …`);
  process.env.DEBIAN_FRONTEND = 'noninteractive';
  await attempt('apt-get', ['update', '-qq']);
  await attempt('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packagesOf(missing)]);
  return missingPrograms();
}

/** Every test file, as a path from the root. */
function testFiles() {
  const under = ['packages', 'apps', 'internal'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true }).map((name) => join(folder, name)),
  );
  return under.filter((path) => path.endsWith('.test.ts') && !/\bnode_modules\b|\bdist\b/.test(path));
}

/** Test files that cannot run, each with the programs that it lacks. */
function leftOut(missing) {
  const lacks = (path) => [...programsOf(join(ROOT, path))].filter((name) => missing.includes(name));
  return testFiles()
    .map((path) => ({ path, lacks: lacks(path) }))
    .filter((each) => each.lacks.length > 0);
}

function sayLeftOut(files, missing) {
  if (files.length === 0) return;
  console.error('\nThese tests did not run, since programs that they compare with are missing:');
  for (const { path, lacks } of files) console.error(`  ${path}: ${lacks.join(', ')}`);
  console.error(`On Debian: apt-get install ${packagesOf(missing).join(' ')}`);
}

await ensureInstalled();
preparePath();
const missing = await installPrograms();
const files = leftOut(missing);
await build();
await tool('tsc', ['-p', 'tsconfig.test.json']);
await tool('biome', ['check', '.']);
await run(process.execPath, ['internal/checks/all.mjs']);
const excluded = files.flatMap(({ path }) => ['--exclude', path]);
const status = await attempt(toolPath('vitest'), ['run', ...excluded, ...process.argv.slice(2)]);
sayLeftOut(files, missing);
const isIncomplete = files.length > 0 && Boolean(process.env.CI);
process.exitCode = status !== 0 || !isIncomplete ? status : 1;
