/** Source files as syntax trees (ESTree with TypeScript's nodes), parsed once for all checks. */
import { parseSync } from 'oxc-parser';

const parsed = new WeakMap();

/** Syntax tree and comments of a file. @throws Error where the text is not in the language */
export function sourceOf(tree, path) {
  if (!parsed.has(tree)) parsed.set(tree, new Map());
  const files = parsed.get(tree);
  if (!files.has(path)) files.set(path, parse(path, tree.read(path)));
  return files.get(path);
}

function parse(path, text) {
  const { program, comments, errors } = parseSync(path, text, { range: true });
  if (errors.length > 0) throw new Error(`${path}: ${errors[0].message}`);
  return { program, comments, text };
}

/** Whether a path holds TypeScript or JavaScript. */
export function isSource(path) {
  return /\.[cm]?[jt]sx?$/.test(path);
}

/** Children of a node, in the order of the source. */
export function childrenOf(node) {
  const children = [];
  // millions of nodes come by: a list for each of their fields took a quarter of all checks
  for (const key in node) {
    const value = node[key];
    if (typeof value !== 'object' || value === null) continue;
    for (const each of Array.isArray(value) ? value : [value])
      if (typeof each?.type === 'string') children.push(each);
  }
  return children;
}

/** Calls `visit(node, parent)` on a node and everything in it. */
export function walk(node, visit, parent = null) {
  visit(node, parent);
  for (const child of childrenOf(node)) walk(child, visit, node);
}

/** Line of an offset in a text, counted from 1. */
export function lineOf(text, offset) {
  return text.slice(0, offset).split('\n').length;
}
