/**
 * What `npm pack` runs first: everything is built, the command is bundled, and the root's manifest is held against
 * what the bundle needs, since it alone says what is installed with the package.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { build, ensureInstalled, ROOT } from './run.mjs';

/** Packages whose files are read rather than imported. */
const READ = ['@expo-google-fonts/fira-sans'];

function manifest(folder) {
  return JSON.parse(readFileSync(join(ROOT, folder, 'package.json'), 'utf8'));
}

function packageName(specifier) {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

/** Third-party packages that the bundle imports. */
function neededBy(chunks) {
  const own = new Set(chunks.map(({ fileName }) => fileName));
  const imported = chunks.flatMap(({ imports, dynamicImports }) => [...imports, ...dynamicImports]);
  const others = imported.filter((each) => !own.has(each) && !each.startsWith('node:'));
  return new Set([...others.map(packageName), ...READ].filter((name) => !builtinModules.includes(name)));
}

/** The version of each third-party package that a workspace declares. */
function declaredVersions() {
  const folders = ['packages', 'apps'].flatMap((floor) =>
    readdirSync(join(ROOT, floor)).map((name) => join(floor, name)),
  );
  return Object.assign({}, ...folders.map((folder) => manifest(folder).dependencies));
}

await ensureInstalled();
await build();
const vite = await import('vite');
const { output } = await vite.build({ configFile: join(ROOT, 'bin/vite.config.mjs'), logLevel: 'warn' });
const versions = declaredVersions();
const needed = [...neededBy(output.filter(({ type }) => type === 'chunk'))].toSorted();
const root = manifest('');
// An override holds in a clone only: the package says the same by depending on that version itself.
const entries = [...needed.map((name) => [name, versions[name]]), ...Object.entries(root.overrides)];
const dependencies = Object.fromEntries(entries.toSorted(([a], [b]) => (a < b ? -1 : 1)));
if (JSON.stringify(root.dependencies) !== JSON.stringify(dependencies)) {
  if (process.argv.includes('--write')) {
    writeFileSync(join(ROOT, 'package.json'), `${JSON.stringify({ ...root, dependencies }, null, 2)}\n`);
  } else {
    console.error('package.json does not name what the package needs: run "node scripts/pack.mjs --write".');
    process.exit(1);
  }
}
