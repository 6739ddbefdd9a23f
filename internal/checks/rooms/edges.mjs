/**
 * The import rule: a room imports from the floors under its own, through what the other package exports, and nothing
 * by a path that leaves its own folder; no app imports an app; what ships imports nothing that does not ship. Tests keep
to a rule of their own: besides the floors below they may import neighbours and `internal/testing`.
 */
import { manifestOf, workspaceOf } from '../tree.mjs';
import { houseFiles, roomOf, workspaceNamed, zoneOf } from './house.mjs';
import { referencesOf } from './references.mjs';
import { isExported, isNodeModule, isRelative, packageName, resolveRelative } from './resolve.mjs';

function isApp(workspace) {
  return workspace.startsWith('apps/');
}

/** Why a room may not import another, or null. A test may compare its room with a neighbour. */
function floorFault(from, to, isTest) {
  if (isTest && roomOf(from).floor === roomOf(to).floor) return null;
  if (isApp(from) && isApp(to)) return `an app imports an app: ${to} (only bin joins apps)`;
  const [mine, other] = [roomOf(from), roomOf(to)];
  if (mine.floor === other.floor) return `imports its neighbour ${to}`;
  return mine.floor < other.floor ? `imports ${to}, which is on a floor above it` : null;
}

/** An asset of the house such as a demo lesson is no module: tests may fetch it where it lies. */
function isAsset(tree, target) {
  return (
    workspaceOf(target) === null && !/\.[cm]?[jt]sx?$/.test(target) && !tree.has(`${target}/package.json`)
  );
}

function pathFault(tree, path, { specifier, isUrl }) {
  const target = resolveRelative(tree, path, specifier);
  const [from, to] = [workspaceOf(path), workspaceOf(target)];
  const zone = zoneOf(path);
  if (from === to && (from !== null || zone !== 'joint')) {
    const isTest = ['test', 'helper'].includes(zoneOf(target));
    return zone === 'shipped' && isTest ? `what ships imports test code: ${specifier}` : null;
  }
  if (zone === 'shipped') return `reaches outside its workspace: ${specifier}`;
  if (to !== null)
    return isUrl && zone !== 'test' ? null : `reaches into ${to} past its exports: ${specifier}`;
  if (zone !== 'test' || zoneOf(target) === 'helper' || (isUrl && isAsset(tree, target))) return null;
  return `a test imports what is neither its room nor internal/testing: ${specifier}`;
}

function packageFault(tree, path, { specifier }) {
  const to = workspaceNamed(packageName(specifier));
  if (to === null) {
    return specifier.startsWith('@shedbook/')
      ? `imports a room that is not in the table: ${specifier}`
      : null;
  }
  const from = workspaceOf(path);
  const manifest = manifestOf(tree, to);
  if (manifest.name !== undefined && !isExported(manifest, specifier))
    return `reaches into ${to} past its exports: ${specifier}`;
  return from === null || from === to ? null : floorFault(from, to, zoneOf(path) !== 'shipped');
}

/** Every import that the table forbids. */
export function checkEdges(tree) {
  return houseFiles(tree).flatMap((path) => {
    const workspace = workspaceOf(path);
    if (workspace !== null && roomOf(workspace) === undefined) return [];
    return referencesOf(tree, path).flatMap((reference) => {
      const { specifier, line } = reference;
      if (isNodeModule(specifier)) return [];
      const fault = (isRelative(specifier) ? pathFault : packageFault)(tree, path, reference);
      return fault ? [`${path}:${line}: ${fault}`] : [];
    });
  });
}
