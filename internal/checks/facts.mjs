/**
 * Facts: each code belongs to one room, and each has one sentence a language. Two rooms that used one code would
 * overwrite each other's sentence, and nothing would fail to compile.
 */
import { isSource, lineOf, sourceOf, walk } from './source.mjs';

const ROOM = /^(?:packages|apps)\/[^/]+(?=\/src\/)/;
const TEST = /\.test\.tsx?$|\/test\//;

function isTyped(path) {
  return isSource(path) && ROOM.test(path) && !TEST.test(path);
}

/** The literals of a type such as `'a' | 'b'`. */
function literalsOf(type) {
  if (type?.type === 'TSUnionType') return type.types.flatMap(literalsOf);
  return type?.type === 'TSLiteralType' && typeof type.literal.value === 'string' ? [type.literal] : [];
}

/** Codes that a file declares, each with its place: members `fact: 'code'` of types. */
function declaredIn(tree, path) {
  const { program, text } = sourceOf(tree, path);
  const found = [];
  walk(program, (node) => {
    if (node.type !== 'TSPropertySignature' || node.key.name !== 'fact') return;
    for (const { value, start } of literalsOf(node.typeAnnotation?.typeAnnotation))
      found.push({ code: value, path, line: lineOf(text, start) });
  });
  return found;
}

/** Codes that a file has sentences for: the keys of what is handed to `sentences<…>()`. */
function saidIn(tree, path) {
  const { program, text } = sourceOf(tree, path);
  const found = [];
  walk(program, (node) => {
    if (node.type !== 'CallExpression' || node.callee.callee?.name !== 'sentences') return;
    for (const { key, start } of node.arguments[0]?.properties ?? [])
      if (key) found.push({ code: key.value ?? key.name, path, line: lineOf(text, start) });
  });
  return found;
}

/** Every later one of those that bear a code under another owner than the first. */
function repeated(all, ownerOf, what) {
  const first = new Map();
  return all.flatMap((each) => {
    const before = first.get(each.code);
    if (!before) first.set(each.code, each);
    if (!before || ownerOf(before) === ownerOf(each)) return [];
    return [`${each.path}:${each.line}: ${what} "${each.code}", as ${before.path} does`];
  });
}

/** The folder of a language: `english` of `packages/words/src/english/facts/notes.ts`. */
function languageOf(path) {
  return /\/src\/([^/]+)\//.exec(path)?.[1] ?? '';
}

/** Every code of a fact that two rooms use, and every one that one language has two sentences for. */
export function checkFacts(tree) {
  const paths = tree.paths.filter(isTyped);
  const declared = paths.flatMap((path) => declaredIn(tree, path));
  const said = paths.flatMap((path) => saidIn(tree, path));
  const languages = [...new Set(said.map(({ path }) => languageOf(path)))];
  return [
    ...repeated(declared, ({ path }) => ROOM.exec(path)[0], 'uses the fact'),
    ...languages.flatMap((language) => {
      const own = said.filter(({ path }) => languageOf(path) === language);
      return repeated(own, ({ path }) => path, 'says the fact');
    }),
  ];
}
