/** Which file or which package a specifier names. */
import { builtinModules } from 'node:module';
import { dirname, join } from 'node:path';

/** Whether a specifier names a module of Node. */
export function isNodeModule(specifier) {
  return specifier.startsWith('node:') || builtinModules.includes(specifier.split('/')[0]);
}

/** Name of the package in a bare specifier: `a/b` is of `a`, `@a/b/c` of `@a/b`. */
export function packageName(specifier) {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

/** Whether a specifier is a path from the file that holds it. */
export function isRelative(specifier) {
  return /^\.{1,2}(?:\/|$)/.test(specifier);
}

const ENDINGS = ['', '.ts', '.tsx', '.mjs', '.js', '/index.ts', '/index.tsx'];

/** The path that a relative specifier names; the file itself where the tree has it, whatever its ending. */
export function resolveRelative(tree, from, specifier) {
  const path = join(dirname(from), specifier.replace(/\?.*$/, ''));
  const found = ENDINGS.map((ending) => path + ending).find((each) => tree.has(each));
  const asSource = path.replace(/\.([cm]?)js(x?)$/, '.$1ts$2');
  return found ?? (tree.has(asSource) ? asSource : path);
}

/** Whether the `exports` of a package let a specifier such as `@a/b/theme/x.css` through. */
export function isExported(manifest, specifier) {
  // What follows a question mark tells the bundler how a file is wanted.
  const [asked] = `.${specifier.slice(manifest.name.length)}`.split('?');
  return Object.keys(manifest.exports ?? {}).some((key) => {
    const [before, after] = key.split('*');
    return after === undefined ? key === asked : asked.startsWith(before) && asked.endsWith(after);
  });
}
