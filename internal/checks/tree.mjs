/**
 * The files that the checks look at: the project's own, or a planted tree. A check takes a tree and nothing else, so
 * that a planted fault is checked by the same code as the house.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * `fileOf`: where a path lies on the disk, or would lie where it is not in the tree, as what was compiled is not.
 * @typedef {{
 *   paths: string[], has(path: string): boolean, read(path: string): string, fileOf(path: string): string
 * }} Tree
 */

/** The project's root folder. */
export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Where the planted trees lie: they are wrong on purpose. */
export const PLANTED = 'internal/checks/planted';

/** Whether a path is one of tests, or of a suite of them that is run more than once. */
export function isTest(path) {
  return /\.test\.tsx?$|\/test\/suites\/.*\.suite\.ts$/.test(path);
}

function treeOf(root, filesByPath) {
  const texts = new Map();
  const read = (path) => {
    if (!texts.has(path)) texts.set(path, readFileSync(filesByPath.get(path), 'utf8'));
    return texts.get(path);
  };
  const paths = [...filesByPath.keys()].sort();
  return {
    paths,
    has: (path) => filesByPath.has(path),
    read,
    fileOf: (path) => filesByPath.get(path) ?? join(root, path),
  };
}

/** Every file that git tracks or would track under `root`, the planted trees left out. */
export function projectTree(root) {
  const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  const paths = listed.split('\n').filter((path) => path !== '' && !path.startsWith(`${PLANTED}/`));
  return treeOf(
    root,
    new Map(paths.map((path) => [path, join(root, path)]).filter(([, file]) => existsSync(file))),
  );
}

function filesIn(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesIn(path) : [path];
  });
}

/** The files of the given folders laid over each other: a later folder's file takes the place of an earlier one's. */
export function laidOver(...folders) {
  const entries = folders.flatMap((folder) => filesIn(folder).map((file) => [relative(folder, file), file]));
  return treeOf(folders.at(-1), new Map(entries));
}

function bareManifest(workspace) {
  return JSON.stringify({
    name: workspace.replace(/^[^/]+/, '@shedbook'),
    exports: { '.': './src/index.ts' },
  });
}

/** A tree with an empty package for each of some workspaces that it has not. */
export function withRooms(tree, workspaces) {
  const texts = new Map(
    workspaces
      .map((each) => [each, `${each}/package.json`])
      .filter(([, path]) => !tree.has(path))
      .map(([each, path]) => [path, bareManifest(each)]),
  );
  return {
    ...tree,
    paths: [...tree.paths, ...texts.keys()].sort(),
    has: (path) => texts.has(path) || tree.has(path),
    read: (path) => texts.get(path) ?? tree.read(path),
  };
}

/** The workspace that a path lies in, e.g. `packages/core`, or null. */
export function workspaceOf(path) {
  return /^((?:packages|apps)\/[^/]+)\//.exec(path)?.[1] ?? null;
}

/** The parsed package.json of a workspace (`''` is the root); an empty object where there is none. */
export function manifestOf(tree, workspace) {
  const path = join(workspace, 'package.json');
  return tree.has(path) ? JSON.parse(tree.read(path)) : {};
}
