/**
 * Tests that cannot fail: a test that asserts nothing, asserts only that something is defined, or asserts nowhere but in
 * code that may never run (a branch, a loop over a list that may be empty, a callback of a list or of an event).
 * What a called helper asserts counts, in the test's own file and in those that it imports by path.
 */
import { resolveRelative } from './rooms/resolve.mjs';
import { childrenOf, isSource, lineOf, sourceOf, walk } from './source.mjs';
import { isTest } from './tree.mjs';

/** How surely something asserts, from not at all to always. */
const [NEVER, MAYBE, ALWAYS] = [0, 1, 2];

/** Callbacks of these may never be called: of lists, which may be empty, and of events. */
const MAY_NOT_CALL = new Set(
  'forEach map flatMap filter some every find reduce on once then catch addEventListener setTimeout'.split(
    ' ',
  ),
);

const BRANCHES = new Set(['ConditionalExpression', 'LogicalExpression', 'SwitchStatement', 'CatchClause']);
const LOOPS = new Set(['ForStatement', 'ForOfStatement', 'ForInStatement', 'WhileStatement']);
const FUNCTIONS = new Set(['ArrowFunctionExpression', 'FunctionExpression', 'FunctionDeclaration']);

/** The name that a chain of calls and members begins with: `expect` of `expect(x).not.toBe(1)`. */
function rootName(node) {
  if (node?.type === 'Identifier') return node.name;
  if (node?.type === 'CallExpression') return rootName(node.callee);
  if (node?.type === 'AwaitExpression') return rootName(node.argument);
  return node?.type === 'MemberExpression' ? rootName(node.object) : null;
}

function memberName(node) {
  return node.type === 'MemberExpression' ? node.property.name : null;
}

const declared = new WeakMap();

/** Functions and tables that a file declares, at any depth, or imports by path, by name. */
function namesIn(tree, path) {
  if (!declared.has(tree)) declared.set(tree, new Map());
  const files = declared.get(tree);
  if (!files.has(path)) files.set(path, readNames(tree, path));
  return files.get(path);
}

/** Names of a file of a tree. */
class Names extends Map {
  constructor(tree) {
    super();
    this.tree = tree;
  }
}

function readNames(tree, path) {
  const names = new Names(tree);
  walk(sourceOf(tree, path).program, (node) => {
    if (node.type === 'FunctionDeclaration' && node.id) names.set(node.id.name, { node, path });
    if (node.type === 'VariableDeclarator' && node.init && node.id.type === 'Identifier')
      names.set(node.id.name, { node: node.init, path });
    if (node.type === 'ImportDeclaration' && /^\.|^@shedbook\//.test(node.source.value))
      for (const { imported, local } of node.specifiers)
        importName(tree, path, { from: node.source.value, imported, local }, names);
  });
  return names;
}

function importName(tree, path, { from, imported, local }, names) {
  const there = from.startsWith('.') ? resolveRelative(tree, path, from) : null;
  if (imported && there && tree.has(there) && isSource(there))
    names.set(local.name, { there, name: imported.name });
  if (imported && from.startsWith('@shedbook/'))
    names.set(local.name, { room: `packages/${from.split('/')[1]}`, name: imported.name });
}

/** The table that a room's door hands out under a name in capitals: where one of its files declares it. */
function tableOf(tree, room, name) {
  const folder = `${room}/src/`;
  const declares = new RegExp(`^export const ${name}\\b`, 'm');
  const path = tree.paths.find(
    (each) => each.startsWith(folder) && isSource(each) && declares.test(tree.read(each)),
  );
  return path && namesIn(tree, path).get(name);
}

/** What a name stands for, followed through the files that hand it on; null where nobody knows. */
function meantBy(tree, { node, path, there, room, name }) {
  if (node) return { node, names: namesIn(tree, path) };
  const own = there ? namesIn(tree, there).get(name) : null;
  const next = own ?? tableOf(tree, room ?? there.split('/').slice(0, 2).join('/'), name);
  return next ? meantBy(tree, next) : null;
}

/** Of a list with members these make another one with as many. */
const AS_MANY = new Set('map toSorted toReversed entries keys values'.split(' '));

/** Whether a list has members: it is written out, or made of one that is, in this file or in the one it comes from. */
function hasRows(node, names) {
  if (/^TS(?:As|Satisfies|NonNull)Expression$/.test(node?.type)) return hasRows(node.expression, names);
  if (node?.type === 'ArrayExpression') return node.elements.length > 0;
  if (node?.type === 'ObjectExpression') return node.properties.length > 0;
  if (node?.type === 'CallExpression') {
    if (rootName(node.callee) === 'Object') return hasRows(node.arguments[0], names);
    return AS_MANY.has(memberName(node.callee)) && hasRows(node.callee.object, names);
  }
  if (node?.type !== 'Identifier') return false;
  const table = names.get(node.name);
  const meant = table ? meantBy(names.tree, table) : null;
  return meant ? hasRows(meant.node, meant.names) : false;
}

/** Whether a loop such as `for (let i = 0; i < 10; i += 1)` goes round once at least. */
function goesRound({ init, test }, names) {
  const from = init?.declarations?.[0]?.init?.value;
  if (typeof from !== 'number' || !/^<=?$/.test(test?.operator)) return false;
  const { right } = test;
  if (right.type === 'MemberExpression' && memberName(right) === 'length')
    return hasRows(right.object, names);
  return test.operator === '<' ? right.value > from : right.value >= from;
}

/** Whether a loop goes round once at least. */
function surelyLoops(node, names) {
  if (node.type === 'ForOfStatement') return hasRows(node.right, names);
  return node.type === 'ForStatement' && goesRound(node, names);
}

/** How surely what a name stands for asserts. */
const asserted = new WeakMap();

/** Reads how surely the nodes of one file assert. */
class Reader {
  #tree;
  #names;
  /** Names that are being read, so that a function that calls itself is read once. */
  #open;

  constructor(tree, path, open = new Set()) {
    this.#tree = tree;
    this.#names = namesIn(tree, path);
    this.#open = open;
  }

  /** Of a node and what is in it. */
  of(node) {
    if (node.type === 'CallExpression') return this.#call(node);
    if (isNamedFunction(node)) return NEVER;
    if (node.type === 'IfStatement') return this.#branch(node);
    if (surelyLoops(node, this.#names)) return this.of(node.body);
    const inside = this.#most(childrenOf(node));
    return LOOPS.has(node.type) || BRANCHES.has(node.type) ? Math.min(inside, MAYBE) : inside;
  }

  #most(nodes) {
    return Math.max(NEVER, ...nodes.map((each) => this.of(each)));
  }

  #branch({ test, consequent, alternate }) {
    const sides = [consequent, alternate].map((each) => (each ? this.of(each) : NEVER));
    const least = Math.min(...sides) === ALWAYS ? ALWAYS : Math.min(Math.max(...sides), MAYBE);
    return Math.max(this.of(test), least);
  }

  #call(node) {
    const { callee } = node;
    const root = rootName(callee);
    const member = memberName(callee);
    if (/^expect/.test(root) && member !== null && member !== 'poll')
      return member === 'toBeDefined' ? MAYBE : ALWAYS;
    if (/^assert/.test(root)) return ALWAYS;
    if (root === 'fc') return this.#property(node);
    const inside = Math.max(this.of(callee), this.#most(node.arguments));
    const isList = MAY_NOT_CALL.has(member) && !(callee.object && hasRows(callee.object, this.#names));
    return Math.max(isList ? Math.min(inside, MAYBE) : inside, member === null ? this.#named(root) : NEVER);
  }

  /** A property is tried with many values, so that lists among them have members in some. */
  #property({ arguments: given }) {
    const named = given.map((each) => (each.type === 'Identifier' ? this.#named(each.name) : NEVER));
    return Math.max(this.#most(given), ...named) === NEVER ? NEVER : ALWAYS;
  }

  /** Of what a name stands for, when it is called. */
  #named(name) {
    const meant = this.#names.get(name);
    if (!meant || this.#open.has(meant)) return NEVER;
    if (!asserted.has(meant)) {
      this.#open.add(meant);
      asserted.set(meant, this.#declared(meant));
      this.#open.delete(meant);
    }
    return asserted.get(meant);
  }

  #declared({ there, name, node }) {
    if (there) return new Reader(this.#tree, there, this.#open).#named(name);
    return node && FUNCTIONS.has(node.type) ? this.of(node.body) : NEVER;
  }
}

/** A function with a name asserts where it is called. */
function isNamedFunction({ type, init }) {
  return type === 'FunctionDeclaration' || (type === 'VariableDeclarator' && FUNCTIONS.has(init?.type));
}

/** The calls that make tests, with their bodies. */
function testsIn(node) {
  if (node.type !== 'CallExpression') return childrenOf(node).flatMap(testsIn);
  const body = node.arguments.find((each) => FUNCTIONS.has(each.type));
  if (/^(?:it|test)$/.test(rootName(node.callee)) && body) return [{ node, body: body.body }];
  return childrenOf(node).flatMap(testsIn);
}

/** A line that the compiler must refuse is an assertion, of types. */
function refusesTypes({ comments }, { start, end }) {
  return comments.some(
    (each) => each.start > start && each.end < end && each.value.includes('@ts-expect-error'),
  );
}

const FAULT = ['asserts nothing', 'asserts only where nothing may run, or that something is defined'];

function faultsIn(tree, path) {
  const source = sourceOf(tree, path);
  return testsIn(source.program).flatMap(({ node, body }) => {
    const found = refusesTypes(source, node) ? ALWAYS : new Reader(tree, path).of(body);
    return found === ALWAYS
      ? []
      : [`${path}:${lineOf(source.text, node.start)}: a test that ${FAULT[found]}`];
  });
}

/** Every test of a tree that cannot fail. */
export function checkAssertions(tree) {
  return tree.paths.filter(isTest).flatMap((path) => faultsIn(tree, path));
}
