/**
 * What a built script asks of a browser: its syntax, and the parts of the platform that it names.
 *
 * Found are: globals (`VideoFrame`), what hangs on them by name (`Promise.try`, `navigator.wakeLock`), and methods that
 * are called on anything where no type of the language or of the page has one of that name in every browser
 * (`.toSorted()`); types that no page of ours has in hand (GPU, XR …) are left out, since their names are everybody's.
 *
 * A part is let be where the same file asks for it first: `typeof x`, `'x' in y`, `y.x?.()`, `y.x && …`, `!y.x`.
 */
import { parse } from 'acorn';
import { full } from 'acorn-walk';
import { compatData, entryOf, lackedBy } from './support.mjs';

/** Editions of the language, oldest first, each with what came with it as syntax. Source: ECMA-262, editions. */
const EDITIONS = [
  [
    2022,
    ['classes.static.initialization_blocks', 'classes.private_class_fields_in', 'builtins.RegExp.hasIndices'],
  ],
  [2024, ['builtins.RegExp.unicodeSets']],
  [2025, ['statements.import.import_attributes', 'regular_expressions.modifier']],
  [2026, ['statements.using']],
];

const there = (names) => names.map((name) => entryOf(`javascript.${name}`).__compat);

/** The newest edition whose syntax the oldest browsers have. */
export function editionFor(oldest) {
  const has = ([, names]) => there(names).every((compat) => lackedBy(compat, oldest).length === 0);
  const until = EDITIONS.findIndex((edition) => !has(edition));
  const edition = until < 0 ? EDITIONS.at(-1) : EDITIONS[until - 1];
  return edition?.[0] ?? 2021;
}

/** What globals are, where that is not their own name. */
const GLOBALS = {
  window: 'Window',
  self: 'Window',
  globalThis: 'Window',
  document: 'Document',
  navigator: 'Navigator',
  performance: 'Performance',
  crypto: 'Crypto',
  caches: 'CacheStorage',
  screen: 'Screen',
  history: 'History',
};

/** Types that a page of ours has in hand. */
const IN_HAND =
  /^(?:Window|Document|Element|Node|EventTarget|HTML\w*Element|SVG\w*Element|Worker|MessagePort|\w*Audio\w*(?<!AudioData|AudioEncoder|AudioDecoder)|MediaStream\w*|MediaDevices|MediaRecorder|MIDI\w+|Blob|File|FileList|Request|Response|Headers|FormData|Cache\w*|IDB\w+|Abort\w+|URL\w*|\w*Stream\w*(?<!FileSystemWritableFileStream|Stats)|Service\w+|StorageManager|Permissions|SubtleCrypto|Crypto|Performance|CanvasRenderingContext2D|OffscreenCanvas\w*|ResizeObserver\w*|IntersectionObserver|MutationObserver|CustomEvent|Event|KeyboardEvent|PointerEvent|Selection|Range|DOM\w+|Animation|WakeLock\w*)$/;

/** The language's own types; those of Intl lie in it. */
function builtins() {
  const { builtins: own } = compatData().javascript;
  return [...Object.entries(own), ...Object.entries(own.Intl)];
}

let methods = null;

/** Methods by their name: the entries of every type that has one. */
function methodsByName() {
  if (methods) return methods;
  methods = new Map();
  const types = [...Object.entries(compatData().api), ...builtins()];
  for (const [, members] of types)
    for (const [name, { __compat }] of Object.entries(members))
      if (__compat && !/_(?:event|static)$/.test(name))
        methods.set(name, [...(methods.get(name) ?? []), __compat]);
  return methods;
}

let inHand = null;

/** Methods that one of the types that a page has in hand, or that the language has, brings. */
function methodsInHand() {
  if (inHand) return inHand;
  const types = Object.entries(compatData().api).filter(([type]) => IN_HAND.test(type));
  const members = [...builtins(), ...types].flatMap(([, all]) => Object.entries(all));
  inHand = new Set(members.flatMap(([name, member]) => (member?.__compat ? [name] : [])));
  return inHand;
}

/** The entry of a global, or of what hangs on one. */
function named(global, member) {
  const type = GLOBALS[global] ?? global;
  const root = compatData().api[type] ?? compatData().javascript.builtins[type];
  if (member === null) return GLOBALS[global] ? undefined : root?.__compat;
  return (root?.[member] ?? root?.[`${member}_static`])?.__compat;
}

const nameOf = (node) => node?.property?.name ?? node?.name;

/** The names that a node asks after: whether they are there at all. */
function asksAfter(node) {
  const { type, operator, argument, left, right, test, callee, object } = node;
  if (type === 'UnaryExpression' && ['typeof', '!'].includes(operator)) return [nameOf(argument)];
  if (type === 'BinaryExpression' && operator === 'in') return [left.value ?? left.quasis?.[0]?.value.cooked];
  if (type === 'BinaryExpression' && /^[!=]==?$/.test(operator)) return [nameOf(left), nameOf(right)];
  if (type === 'LogicalExpression' || (type === 'AssignmentExpression' && /^(?:\?\?|\|\|)=$/.test(operator)))
    return [nameOf(left)];
  if (type === 'IfStatement' || type === 'ConditionalExpression') return [nameOf(test)];
  if (type === 'CallExpression' && node.optional) return [nameOf(callee)];
  return type === 'MemberExpression' && node.optional ? [nameOf(object)] : [];
}

/** What a file asks for before it uses it. */
function askedFor(program) {
  const asked = new Set();
  full(program, (node) => {
    for (const name of asksAfter(node)) asked.add(name);
  });
  return asked;
}

/** Names that a file declares itself: they are nobody's global. */
function declaredIn(program) {
  const own = new Set();
  const bind = (pattern) => {
    if (pattern?.type === 'Identifier') own.add(pattern.name);
  };
  full(program, (node) => {
    if (node.type === 'VariableDeclarator') bind(node.id);
    if (/^(?:Function|Class)/.test(node.type)) bind(node.id);
    for (const param of node.params ?? []) bind(param);
    if (/^Import.*Specifier$/.test(node.type)) bind(node.local);
  });
  return own;
}

/** Parts of the platform that a node uses, as `[name, what is shown, entries, of what]`; any entry is enough. */
function usedBy(node, own) {
  if (node.type === 'Identifier' && !own.has(node.name)) {
    const compat = named(node.name, null);
    return compat ? [[node.name, node.name, [compat]]] : [];
  }
  const member = node.type === 'CallExpression' && !node.optional ? node.callee : node;
  if (member.type !== 'MemberExpression' || member.computed || member.property.type !== 'Identifier')
    return [];
  const { object, property } = member;
  const hangsOn = object.type === 'Identifier' && !own.has(object.name) && named(object.name, property.name);
  if (hangsOn) return [[property.name, `${object.name}.${property.name}`, [hangsOn], object.name]];
  const entries = member === node ? undefined : methodsByName().get(property.name);
  return entries && methodsInHand().has(property.name)
    ? [[property.name, `.${property.name}()`, entries]]
    : [];
}

/** What is wrong with a script's syntax in an edition of the language. */
export function syntaxOf(text, ecmaVersion) {
  try {
    parse(text, { ecmaVersion, sourceType: 'script' });
    return [];
  } catch (error) {
    return [`syntax: ${error.message}`];
  }
}

/**
 * What a script asks that the oldest browsers lack, each once, as `what: which browsers`.
 * @param oldest versions by the data's own names
 * @param allowed what is let be, as it would be shown
 */
export function lackedByScript(text, oldest, allowed = new Set()) {
  let program;
  try {
    program = parse(text, { ecmaVersion: editionFor(oldest), sourceType: 'module' });
  } catch (error) {
    return [`syntax: ${error.message}`];
  }
  const [asked, own, found] = [askedFor(program), declaredIn(program), new Map()];
  full(program, (node) => {
    for (const [name, shown, entries, of] of usedBy(node, own)) {
      if (asked.has(name) || asked.has(of) || allowed.has(shown) || found.has(shown)) continue;
      const lacks = entries.map((compat) => lackedBy(compat, oldest));
      if (lacks.every((each) => each.length > 0)) found.set(shown, lacks[0].join(', '));
    }
  });
  return [...found].map(([what, who]) => `${what}: ${who}`);
}
