/**
 * No cycles: neither between files of a room nor between its folders at any depth, types included; and where a
 * package.json has `"shedbook": {"layers": [...]}`, lowest first, each folder of `src` imports the layers before its own
 * only. A layer is a folder's name, or a file's that lies in no folder (`fact.ts`), or a list of such that do not import
 * each other. Files in no folder that are not named lie above all layers.
 */
import { manifestOf, workspaceOf } from '../tree.mjs';
import { houseFiles, workspacesOf, zoneOf } from './house.mjs';
import { referencesOf } from './references.mjs';
import { isRelative, resolveRelative } from './resolve.mjs';

function shippedFiles(tree, workspace) {
  return houseFiles(tree).filter((path) => workspaceOf(path) === workspace && zoneOf(path) === 'shipped');
}

/** Imports between the shipped files of a workspace. */
function edgesOf(tree, workspace) {
  return shippedFiles(tree, workspace).flatMap((from) =>
    referencesOf(tree, from)
      .filter(({ specifier }) => isRelative(specifier))
      .map(({ specifier, line }) => ({ from, to: resolveRelative(tree, from, specifier), line }))
      .filter(({ to }) => to !== from && tree.has(to) && to.startsWith(`${workspace}/src/`)),
  );
}

/** A shortest way round from a node back to itself, or null. */
function wayRound(start, next) {
  const cameFrom = new Map();
  const queue = [start];
  for (const node of queue) {
    for (const to of next.get(node) ?? []) {
      if (to === start) return unwind(node, start, cameFrom);
      if (cameFrom.has(to)) continue;
      cameFrom.set(to, node);
      queue.push(to);
    }
  }
  return null;
}

function unwind(last, start, cameFrom) {
  const way = [start];
  for (let node = last; node !== start; node = cameFrom.get(node)) way.unshift(node);
  return [start, ...way];
}

/** One way round for each knot of a graph: shortest ways, no node in two of them. */
export function cyclesIn(edges) {
  const next = new Map();
  for (const { from, to } of edges) next.set(from, (next.get(from) ?? new Set()).add(to));
  const seen = new Set();
  return [...next.keys()].sort().flatMap((node) => {
    const way = seen.has(node) ? null : wayRound(node, next);
    for (const each of way ?? []) seen.add(each);
    return way ? [way] : [];
  });
}

/** The folders in which two files part: `a/b/x` and `a/c/y` part at `a/b` and `a/c`; null where one is not in a folder of its own. */
function parting({ from, to }) {
  const [a, b] = [from.split('/'), to.split('/')];
  const depth = a.findIndex((part, i) => part !== b[i]);
  if (depth >= a.length - 1 || depth >= b.length - 1) return null;
  return { from: a.slice(0, depth + 1).join('/'), to: b.slice(0, depth + 1).join('/') };
}

function layerFaults(tree, workspace, edges) {
  const layers = manifestOf(tree, workspace).shedbook?.layers;
  if (layers === undefined) return [];
  const src = `${workspace}/src/`;
  const heights = new Map(layers.flatMap((layer, i) => [layer].flat().map((folder) => [folder, i])));
  const folderOf = (path) => {
    const [first, ...rest] = path.slice(src.length).split('/');
    return rest.length > 0 || heights.has(first) ? first : null;
  };
  const folders = new Set(shippedFiles(tree, workspace).map(folderOf));
  folders.delete(null);
  const manifest = `${workspace}/package.json`;
  return [
    ...[...folders]
      .filter((each) => !heights.has(each))
      .map((each) => `${manifest}: no layer for src/${each}`),
    ...[...heights.keys()]
      .filter((each) => !folders.has(each))
      .map((each) => `${manifest}: a layer without a folder: ${each}`),
    ...edges.flatMap(({ from, to, line }) => {
      const [lower, upper] = [folderOf(to), folderOf(from)];
      if (upper === null || lower === upper) return [];
      if (lower === null) return [`${from}:${line}: a layer imports a file above all layers: ${to}`];
      return heights.get(lower) < heights.get(upper)
        ? []
        : [`${from}:${line}: ${upper} imports ${lower}, which is no lower layer`];
    }),
  ];
}

/** Every cycle and every import that goes up the layers. */
export function checkCycles(tree) {
  return workspacesOf(tree).flatMap((workspace) => {
    const edges = edgesOf(tree, workspace);
    const folders = edges.map(parting).filter((each) => each !== null);
    const show = (way) => way.map((each) => each.slice(workspace.length + 1)).join(' > ');
    return [
      ...cyclesIn(edges).map((way) => `${workspace}: files import in a circle: ${show(way)}`),
      ...cyclesIn(folders).map((way) => `${workspace}: folders import in a circle: ${show(way)}`),
      ...layerFaults(tree, workspace, edges),
    ];
  });
}
