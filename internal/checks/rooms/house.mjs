/** Where a file stands in the house: its room, and whether it ships. */
import { ROOMS } from '../rooms.data.mjs';
import { isSource } from '../source.mjs';
import { workspaceOf } from '../tree.mjs';

const BY_NAME = new Map(ROOMS.map((room) => [room.name, room]));

/** The table's row of a workspace, or undefined. */
export function roomOf(workspace) {
  return BY_NAME.get(workspace);
}

/** The workspace whose package has a name, e.g. `packages/core` for `@shedbook/core`, or null. */
export function workspaceNamed(name) {
  const [scope, room] = name.split('/');
  if (scope !== '@shedbook') return null;
  return [`packages/${room}`, `apps/${room}`].find((each) => BY_NAME.has(each)) ?? null;
}

/** @typedef {'shipped' | 'test' | 'helper' | 'joint' | 'tool'} Zone */

/**
 * What a source file is for. `shipped`: part of a room; `test`: a room's tests, benches and what they share;
 * `helper`: what tests of several rooms share; `joint`: the root `bin`, which joins the apps; `tool`: all else.
 * @returns {Zone}
 */
export function zoneOf(path) {
  if (path.startsWith('bin/')) return 'joint';
  if (path.startsWith('internal/testing/')) return 'helper';
  const workspace = workspaceOf(path);
  if (workspace === null) return 'tool';
  const inside = path.slice(workspace.length + 1);
  if (/\.(?:test|bench)\.[cm]?[jt]sx?$/.test(inside) || inside.startsWith('test/')) return 'test';
  return /^(?:src|bin)\//.test(inside) ? 'shipped' : 'tool';
}

/** Source files of a tree that the import rule looks at. */
export function houseFiles(tree) {
  return tree.paths.filter(
    (path) =>
      isSource(path) && (workspaceOf(path) !== null || /^(?:bin|internal|bench|scripts)\//.test(path)),
  );
}

/** Workspaces of a tree: folders of `packages` and `apps` that hold a package.json. */
export function workspacesOf(tree) {
  return [...new Set(tree.paths.map(workspaceOf))].filter((each) => each && tree.has(`${each}/package.json`));
}
