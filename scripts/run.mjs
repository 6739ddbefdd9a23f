/** Running commands for the project's scripts: output goes to the terminal, a failure ends the script. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** Runs a command in the project's folder. @returns its exit status, 1 when it could not be started */
export function attempt(command, args) {
  const child = spawn(command, args, { cwd: ROOT, stdio: 'inherit' });
  return new Promise((resolve) => {
    child.on('exit', (code) => resolve(code ?? 1));
    child.on('error', (error) => {
      console.error(`Could not run ${command}: ${error.message}`);
      resolve(1);
    });
  });
}

/** Runs a command; what it prints comes as one piece when it has ended. @returns its exit status */
function attemptQuietly(command, args) {
  const child = spawn(command, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  const said = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (piece) => said.push(piece));
  return new Promise((resolve) => {
    child.on('error', (error) => said.push(Buffer.from(`Could not run ${command}: ${error.message}\n`)));
    child.on('close', (code) => {
      process.stderr.write(Buffer.concat(said));
      resolve(code ?? 1);
    });
  });
}

/** Runs commands side by side; each says all that it has found. @returns the exit status of each */
export function allSideBySide(commands) {
  return Promise.all(commands.map(([command, args]) => attemptQuietly(command, args)));
}

/** Runs a command in the project's folder; exits with its status when it fails. */
export async function run(command, args) {
  const status = await attempt(command, args);
  if (status !== 0) process.exit(status);
}

/** The file of a tool from the installed packages. */
export function toolPath(name) {
  return join(ROOT, 'node_modules', '.bin', name);
}

/** Runs a tool from the installed packages; exits with its status when it fails. */
export function tool(name, args) {
  return run(toolPath(name), args);
}

/** What `npm ci` installs: for `start` what the program runs on and is built with, for `all` the tools of tests too. */
const SELECTIONS = {
  start: ['--workspace=packages', '--workspace=apps', '--include-workspace-root'],
  all: [],
};

function lockHash() {
  return createHash('sha256')
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .digest('hex');
}

/** Installs the packages unless those of the lock file are there already; no package's script is run. */
export async function ensureInstalled(selection = 'all') {
  const stamp = join(ROOT, 'node_modules', '.shedbook-installed');
  const hash = lockHash();
  const there = existsSync(stamp) ? readFileSync(stamp, 'utf8') : '';
  if ([`${selection} ${hash}`, `all ${hash}`].includes(there)) return;
  console.log('Installing packages …');
  await run('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', ...SELECTIONS[selection]]);
  writeFileSync(stamp, `${selection} ${hash}`);
}

/** Time of the last change of a file, or of anything in a folder; milliseconds. */
export function changedAt(path) {
  const facts = statSync(path);
  if (!facts.isDirectory()) return facts.mtimeMs;
  return Math.max(facts.mtimeMs, ...readdirSync(path).map((name) => changedAt(join(path, name))));
}

/** Sources that both pages are built from, beside their own. */
function sharedSources() {
  const rooms = readdirSync(join(ROOT, 'packages')).map((name) => join(ROOT, 'packages', name, 'src'));
  const own = ['package.json', 'package-lock.json', 'scripts/pages'];
  return [...own.map((name) => join(ROOT, name)), ...rooms];
}

/** Whether a page was built after the last change of anything it is built from. */
function isCurrent(app) {
  const built = join(ROOT, app, 'dist/site/index.html');
  if (!existsSync(built)) return false;
  const own = ['src', 'public', 'index.html', 'vite.config.ts', 'package.json'];
  const sources = [...sharedSources(), ...own.map((name) => join(ROOT, app, name))];
  return Math.max(...sources.filter(existsSync).map(changedAt)) < statSync(built).mtimeMs;
}

/** The pages in the browser. */
const PAGES = ['apps/desk', 'apps/practice'];

/** Builds pages side by side. */
function buildPages(pages) {
  return pages.map((app) => tool('vite', ['build', app, '--logLevel', 'warn']));
}

/** Compiles and checks every workspace and builds the pages, side by side. */
export async function build() {
  await Promise.all([tool('tsc', ['-b']), ...buildPages(PAGES)]);
}

/** Compiles what runs in Node without checking it, and builds the pages that have changed, side by side. */
export async function buildToRun() {
  const changed = PAGES.filter((app) => !isCurrent(app));
  if (changed.length > 0) console.log('Building …');
  await Promise.all([tool('tsc', ['-b', 'apps/cli', 'apps/server', '--noCheck']), ...buildPages(changed)]);
}
