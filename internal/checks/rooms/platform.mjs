/**
 * What a room may know of its machine. A pure room may use what the language itself has, and of that neither the clock
 * nor chance; a browser room knows no Node, a Node room no DOM.
 */
import { analyze } from '@typescript-eslint/scope-manager';
import { lineOf, sourceOf, walk } from '../source.mjs';
import { workspaceOf } from '../tree.mjs';
import { houseFiles, roomOf, workspacesOf, zoneOf } from './house.mjs';
import { referencesOf } from './references.mjs';
import { isNodeModule } from './resolve.mjs';

/** Globals of ECMAScript 2023 that give the same result everywhere (ECMA-262, clauses 19 to 28). */
const LANGUAGE = new Set(
  `Array ArrayBuffer BigInt BigInt64Array BigUint64Array Boolean DataView Date Error EvalError Float32Array Float64Array
  Infinity Int16Array Int32Array Int8Array Intl JSON Map Math NaN Number Object Promise Proxy RangeError ReferenceError
  Reflect RegExp Set String Symbol SyntaxError TypeError URIError Uint16Array Uint32Array Uint8Array Uint8ClampedArray
  WeakMap WeakSet AggregateError decodeURI decodeURIComponent encodeURI encodeURIComponent isFinite isNaN parseFloat
  parseInt undefined`.split(/\s+/),
);

const NODE = new Set(
  'process Buffer require module exports __dirname __filename global setImmediate clearImmediate'.split(' '),
);

const DOM = new Set(
  `document window navigator location localStorage sessionStorage indexedDB alert requestAnimationFrame AudioContext
  HTMLElement self`.split(/\s+/),
);

const KNOWS = {
  pure: (name) => LANGUAGE.has(name),
  browser: (name) => !NODE.has(name),
  Node: (name) => !DOM.has(name),
};

const DATE_FACTS = new Set(['UTC', 'parse', 'prototype']);

function propertyOf(node, parent) {
  if (parent?.type !== 'MemberExpression' || parent.object !== node) return null;
  return parent.computed ? (parent.property.value ?? null) : parent.property.name;
}

/** Why a use of `Math` or `Date` hides chance or the clock, or null. */
function hiddenInput(node, parent) {
  const property = propertyOf(node, parent);
  if (node.name === 'Math') {
    if (property === null) return 'hands Math around, with its randomness';
    return property === 'random' ? 'uses hidden randomness: Math.random' : null;
  }
  if (node.name !== 'Date' || DATE_FACTS.has(property)) return null;
  const isMade = parent.type === 'NewExpression' && parent.callee === node && parent.arguments.length > 0;
  const isAsked = parent.type === 'BinaryExpression' && parent.operator === 'instanceof';
  return isMade || isAsked ? null : `reads the clock: ${property === null ? 'Date' : `Date.${property}`}`;
}

/** Names used as values that nothing in the file declares. */
function foreignNames({ program }) {
  return analyze(program, { sourceType: 'module', lib: [] })
    .globalScope.through.filter((reference) => reference.isValueReference)
    .map((reference) => reference.identifier);
}

function parentsOf({ program }) {
  const parents = new Map();
  walk(program, (node, parent) => parents.set(node, parent));
  return parents;
}

/** Ambient values such as `declare const process`; descriptions of untyped packages (`declare module 'x'`) are none. */
function handMade(path, { program, text }) {
  return program.body
    .map((node) => node.declaration ?? node)
    .filter((node) => node.declare === true && /^(?:Variable|Class|TSDeclare|TSModule)/.test(node.type))
    .filter((node) => node.id?.type !== 'Literal')
    .map((node) => `${path}:${lineOf(text, node.start)}: declares a global by hand`);
}

function globalFaults(path, platform, source) {
  const names = foreignNames(source);
  const at = (node) => `${path}:${lineOf(source.text, node.start)}`;
  const foreign = names
    .filter((node) => !KNOWS[platform](node.name))
    .map((node) => `${at(node)}: a ${platform} room uses ${node.name}`);
  if (platform !== 'pure') return foreign;
  const inputs = names.filter((node) => node.name === 'Math' || node.name === 'Date');
  const parents = inputs.length > 0 ? parentsOf(source) : new Map();
  const hidden = inputs.flatMap((node) => {
    const fault = hiddenInput(node, parents.get(node));
    return fault ? [`${at(node)}: ${fault}`] : [];
  });
  return [...foreign, ...hidden, ...handMade(path, source)];
}

function moduleFaults(tree, path, platform) {
  if (platform === 'Node') return [];
  return referencesOf(tree, path)
    .filter(({ specifier }) => isNodeModule(specifier))
    .map(({ specifier, line }) => `${path}:${line}: a ${platform} room imports Node: ${specifier}`);
}

function directiveFaults(path, platform, { comments, text }) {
  return comments
    .filter(({ value }) => platform !== 'Node' && /^\/\s*<reference\s+(?:types="node"|lib=)/.test(value))
    .map(
      ({ start }) => `${path}:${lineOf(text, start)}: a ${platform} room takes in another platform's types`,
    );
}

/** A pure room is compiled with the language alone: its tsconfig.json adds neither `lib` nor `types`. */
function compilerFaults(tree, workspace) {
  const path = `${workspace}/tsconfig.json`;
  if (roomOf(workspace)?.platform !== 'pure' || !tree.has(path)) return [];
  const { compilerOptions = {} } = JSON.parse(tree.read(path));
  return ['lib', 'types']
    .filter((key) => key in compilerOptions)
    .map((key) => `${path}: a pure room is compiled with ${key} of its own`);
}

/** Every use of a machine that a room may not know. */
export function checkPlatform(tree) {
  const shipped = houseFiles(tree).filter((path) => zoneOf(path) === 'shipped');
  const faults = shipped.flatMap((path) => {
    const platform = roomOf(workspaceOf(path))?.platform;
    if (platform === undefined) return [];
    const source = sourceOf(tree, path);
    return [
      ...moduleFaults(tree, path, platform),
      ...directiveFaults(path, platform, source),
      ...globalFaults(path, platform, source),
    ];
  });
  return [...faults, ...workspacesOf(tree).flatMap((workspace) => compilerFaults(tree, workspace))];
}
