/**
 * Everything by which one file names another: imports of values and of types, side effects, `export … from`, dynamic
 * imports, `require`, `import.meta.resolve`, import types, and URLs relative to `import.meta.url` (assets, workers).
 */
import { lineOf, sourceOf, walk } from '../source.mjs';

/**
 * @typedef {{ specifier: string, typeOnly: boolean, isUrl: boolean, line: number }} Reference
 * `isUrl`: names a file to be fetched, not a module to be evaluated with the importer
 */

function literal(node) {
  if (node?.type === 'Literal' && typeof node.value === 'string') return node.value;
  if (node?.type === 'TemplateLiteral' && node.expressions.length === 0) return node.quasis[0].value.cooked;
  if (node?.type === 'TSLiteralType') return literal(node.literal);
  return null;
}

function isImportMeta(node, property) {
  return (
    node?.type === 'MemberExpression' &&
    node.object.type === 'MetaProperty' &&
    node.property.name === property
  );
}

const isTyped = (each) => each.importKind === 'type' || each.exportKind === 'type';

/** An import whose every name is a type. */
function namesTypesOnly(node) {
  return isTyped(node) || (node.specifiers?.length > 0 && node.specifiers.every(isTyped));
}

const isRequire = ({ callee }) =>
  callee.name === 'require' || (callee.type === 'MemberExpression' && callee.object.name === 'require');

const value = (node) => ({ specifier: literal(node), typeOnly: false, isUrl: false });
const url = (node) => ({ specifier: literal(node), typeOnly: false, isUrl: true });
const declared = (node) => ({ ...value(node.source), typeOnly: namesTypesOnly(node) });

/** A URL argument: a literal that begins with a dot, beside `import.meta.url` or given to a worker. */
function newUrl({ callee, arguments: [first, second] }) {
  if (callee.name === 'URL' && isImportMeta(second, 'url')) return url(first);
  const isWorker = callee.name === 'Worker' || callee.name === 'SharedWorker';
  return isWorker && literal(first)?.startsWith('.') ? url(first) : null;
}

function call(node) {
  if (isRequire(node)) return value(node.arguments[0]);
  if (isImportMeta(node.callee, 'resolve')) return url(node.arguments[0]);
  const isModuleUrl =
    node.callee.property?.name === 'addModule' && literal(node.arguments[0])?.startsWith('.');
  return isModuleUrl ? url(node.arguments[0]) : null;
}

const BY_TYPE = {
  ImportDeclaration: declared,
  ExportAllDeclaration: declared,
  ExportNamedDeclaration: declared,
  ImportExpression: (node) => value(node.source),
  TSImportType: (node) => ({ ...value(node.source ?? node.argument), typeOnly: true }),
  TSExternalModuleReference: (node) => value(node.expression),
  CallExpression: call,
  NewExpression: newUrl,
};

const read = new WeakMap();

/** Every reference in a file, in its order; what is computed while running has no specifier and is left out. */
export function referencesOf(tree, path) {
  const source = sourceOf(tree, path);
  if (!read.has(source)) read.set(source, findReferences(source));
  return read.get(source);
}

function findReferences({ program, text }) {
  const found = [];
  walk(program, (node) => {
    const reference = BY_TYPE[node.type]?.(node);
    if (reference?.specifier) found.push({ ...reference, line: lineOf(text, node.start) });
  });
  return found;
}
