/** Running commands for the project's scripts: output goes to the terminal, a failure ends the script. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** Runs a command in the project's folder; exits with its status when it fails. */
export function run(command, args) {
  const { status, error } = spawnSync(command, args, { cwd: ROOT, stdio: 'inherit' });
  if (error) console.error(`Could not run ${command}: ${error.message}`);
  if (error || status !== 0) process.exit(status || 1);
}

/** Runs a tool from the installed packages. */
export function tool(name, args) {
  run(join(ROOT, 'node_modules', '.bin', name), args);
}

function lockHash() {
  return createHash('sha256')
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .digest('hex');
}

/**
 * Names the headers of this very Node, where they are installed beside it, to `npm`: a native package that finds no
 * ready-made binary is then compiled without fetching anything.
 */
function useOwnHeaders() {
  const folder = dirname(dirname(process.execPath));
  if (!existsSync(join(folder, 'include', 'node', 'node.h'))) return;
  process.env.npm_config_nodedir ??= folder;
}

/** Installs the packages unless they are those of the lock file already. */
export function ensureInstalled() {
  const stamp = join(ROOT, 'node_modules', '.shedbook-installed');
  const hash = lockHash();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  console.log('Installing packages …');
  useOwnHeaders();
  run('npm', ['ci', '--no-audit', '--no-fund']);
  writeFileSync(stamp, hash);
}

/** Compiles every workspace and builds the desk and the practice page. */
export function build() {
  tool('tsc', ['-b']);
  tool('vite', ['build', 'apps/desk', '--logLevel', 'warn']);
  tool('vite', ['build', 'apps/practice', '--logLevel', 'warn']);
}
