/**
 * The import rule: a room imports from the floors under its own and what it declares; inside core nothing imports
 * upward; nobody reaches into another workspace's files; tests and benches aside, packages know neither DOM nor Node.
 */
import { existsSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, normalize } from 'node:path';
import { filesUnder, textOf, workspaceOf } from './files.mjs';

/** Floors of the house, lowest first: a room imports from the floors under its own, never from its neighbours. */
const FLOORS = [
  ['packages/core', 'packages/signal'],
  ['packages/composer', 'packages/engrave', 'packages/exchange', 'packages/sound', 'packages/listen'],
  ['packages/judge'],
  ['packages/coach'],
  ['packages/words'],
  ['packages/stand', 'packages/pack'],
  ['packages/host'],
  ['apps/cli', 'apps/desk', 'apps/practice', 'apps/server'],
];

function floorOf(workspace) {
  return FLOORS.findIndex((floor) => floor.includes(workspace));
}

/** Layers of core, lowest first: each may import itself and what stands before it. */
const CORE_LAYERS = ['rhythm', 'feel', 'groove', 'notation', 'lesson', 'take'];

/** Type-only imports upward that the model needs: a stroke's lesson, a lesson's voices. */
const TYPE_ONLY_UPWARD = new Set(['groove>lesson']);

const IMPORT = /(?:^|\n)\s*(import|export)\s+(type\s+)?[^'";]*?from\s+'([^']+)'|import\(\s*'([^']+)'\s*\)/g;

/** Imports of a source text: the specifier and whether it is of types only. */
export function importsOf(text) {
  return [...text.matchAll(IMPORT)].map((match) => ({
    specifier: match[3] ?? match[4],
    typeOnly: match[2] !== undefined,
  }));
}

function packageName(specifier) {
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0];
}

function isNode(specifier) {
  return specifier.startsWith('node:') || builtinModules.includes(specifier);
}

function coreLayer(path) {
  return /^packages\/core\/src\/([^/]+)\//.exec(path)?.[1] ?? null;
}

function upward(path, target, typeOnly) {
  const from = CORE_LAYERS.indexOf(coreLayer(path) ?? '');
  const to = CORE_LAYERS.indexOf(coreLayer(target) ?? '');
  if (from < 0 || to <= from) return false;
  return !(typeOnly && TYPE_ONLY_UPWARD.has(`${CORE_LAYERS[from]}>${CORE_LAYERS[to]}`));
}

function relativeFault(path, specifier, typeOnly, isTest) {
  const target = normalize(join(dirname(path), specifier));
  if (workspaceOf(target) !== workspaceOf(path))
    return isTest ? null : `reaches outside its workspace: ${specifier}`;
  if (!isTest && upward(path, target, typeOnly)) return `imports upward inside core: ${specifier}`;
  return null;
}

function packageFault(path, specifier, manifest, isTest) {
  const workspace = workspaceOf(path);
  const name = packageName(specifier);
  const isRoom = workspace.startsWith('packages/');
  if (isTest) return null;
  if (isRoom && isNode(specifier)) return `uses Node: ${specifier}`;
  if (isNode(specifier)) return null;
  const other = `packages/${name.slice('@shedbook/'.length)}`;
  if (
    isRoom &&
    name.startsWith('@shedbook/') &&
    !(floorOf(other) >= 0 && floorOf(other) < floorOf(workspace))
  )
    return `imports another room: ${name}`;
  if (name.startsWith('@shedbook/') && specifier !== name && !specifier.endsWith('.css')) {
    return `reaches into another room: ${specifier}`;
  }
  const declared = { ...manifest.dependencies, ...manifest.devDependencies, ...manifest.peerDependencies };
  return name in declared ? null : `imports an undeclared package: ${name}`;
}

/** Every import that breaks the rule, as `path: what is wrong`. */
export function checkRooms(root) {
  const files = filesUnder(root, ['packages', 'apps']).filter((path) => /\/src\/.*\.tsx?$/.test(path));
  return files.flatMap((path) => {
    const workspace = workspaceOf(path);
    const manifestPath = join(workspace, 'package.json');
    if (!existsSync(join(root, manifestPath))) return [`${workspace}: has no package.json`];
    const manifest = JSON.parse(textOf(root, manifestPath));
    const isTest = /\.(test|bench)\.tsx?$|\/testing\//.test(path);
    return importsOf(textOf(root, path)).flatMap(({ specifier, typeOnly }) => {
      const fault = specifier.startsWith('.')
        ? relativeFault(path, specifier, typeOnly, isTest)
        : packageFault(path, specifier, manifest, isTest);
      return fault ? [`${path}: ${fault}`] : [];
    });
  });
}
