/** Programs from outside that tests need: installed where this machine allows it, named where they are missing. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { missingPrograms, PROGRAMS, programsOf } from '../internal/testing/programs.mjs';
import { attempt, ROOT } from './run.mjs';

/** Debian packages of programs. */
function packagesOf(programs) {
  return [...new Set(programs.map((name) => PROGRAMS[name].debian))];
}

/** Names of the programs that are still missing once what this machine allows has been installed. */
export async function installPrograms() {
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
export function leftOut(missing) {
  const lacks = (path) => [...programsOf(join(ROOT, path))].filter((name) => missing.includes(name));
  return testFiles()
    .map((path) => ({ path, lacks: lacks(path) }))
    .filter((each) => each.lacks.length > 0);
}

/** Names the test files that did not run, and what would let them. */
export function sayLeftOut(files) {
  if (files.length === 0) return;
  console.error('\nThese tests did not run, since programs that they compare with are missing:');
  for (const { path, lacks } of files) console.error(`  ${path}: ${lacks.join(', ')}`);
  const missing = files.flatMap(({ lacks }) => lacks);
  console.error(`On Debian: apt-get install ${packagesOf(missing).toSorted().join(' ')}`);
}
