/** Finding and reading the project's source files for the checks. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

const LEFT_OUT = new Set(['node_modules', 'dist', '.git', 'out']);

function walk(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (LEFT_OUT.has(name)) return [];
    return statSync(path).isDirectory() ? walk(path) : [path];
  });
}

/** Every file under the given folders of `root`, as paths relative to it. */
export function filesUnder(root, folders) {
  return folders.flatMap((folder) => walk(join(root, folder))).map((path) => relative(root, path));
}

/** Text of a file. */
export function textOf(root, path) {
  return readFileSync(join(root, path), 'utf8');
}

/** The workspace that a path lies in, e.g. `packages/core`, or null. */
export function workspaceOf(path) {
  return /^((?:packages|apps)\/[^/]+)\//.exec(path)?.[1] ?? null;
}
