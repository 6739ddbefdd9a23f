/**
 * English outside the words room: a text that reaches a person belongs in a catalogue, whichever room states it.
 *
 * A heuristic on parsed literals: three words apart by spaces, one of them among those that every English sentence has.
 * Not looked at are errors for programmers (what is handed to an `Error`; what a person gave wrongly is a fact), what
 * describes a schema (its reference is English), codes (texts that are a literal type), tests, and the files of FREE.
 */
import { childrenOf, isSource, lineOf, sourceOf, walk } from './source.mjs';

/** Files whose English is meant, and why. */
const FREE = new Map([
  ['packages/routes/src/routes.ts', 'what a route does, for docs/routes.md'],
  ['packages/routes/src/refusal.ts', 'what a refusal means, for docs/routes.md'],
  ['packages/core/src/document/schema.ts', 'the reference of the lesson file'],
  ['packages/core/src/rhythm/cell-names.data.ts', 'names that a lesson file is written with'],
  ['packages/core/src/lesson/defaults.ts', 'names of forms that a lesson file is written with'],
  ['apps/practice/src/session/choice.ts', 'the name of a form of the page’s own'],
  ['apps/server/src/store/migrations.ts', 'SQL'],
  ['apps/server/src/store/examine.ts', 'SQL'],
  ['apps/server/src/store/erased.ts', 'SQL'],
  ['apps/server/src/store/postgres/bell.ts', 'SQL'],
  ['apps/server/src/store/postgres/copy.ts', 'SQL'],
  ['apps/server/src/store/postgres/open.ts', 'SQL'],
  ['apps/server/src/store/postgres/schema.ts', 'SQL'],
  ['apps/server/src/backup/back-up.ts', 'SQL'],
  ['apps/server/src/backup/source.ts', 'SQL'],
  ['apps/server/src/backup/restore.ts', 'SQL'],
  ['apps/server/src/work/file-shelf.ts', 'SQL'],
  ['apps/server/src/work/postgres-shelf.ts', 'SQL'],
  ['packages/core/src/xml/read-xml.ts', 'a fault beside those that the XML parser tells in English'],
]);

const ROOM = /^(?:packages|apps)\/[^/]+\/src\//;
const WORDS = /^packages\/words\/|^packages\/[^/]+\/src\/testing\//;
const TEST = /\.test\.tsx?$|\/(?:test|browser)\//;

/** Words that nearly every English sentence has one of. */
const SMALL = new Set(
  'the a an of is are was were not no in on with and or to for this that there it be has have from by at as but'.split(
    ' ',
  ),
);

/** Whether a text is English prose: three words at least, one of them small. */
function isEnglish(text) {
  const words = text.split(/\s+/).filter((word) => /^["“(]?[A-Za-z’']+[.,:;?!)"”]*$/.test(word));
  return words.length >= 3 && words.some((word) => SMALL.has(word.toLowerCase().replace(/[.!?:;]+$/, '')));
}

/** Whether what a node holds is for programmers, or describes a schema. */
function isForProgrammers({ type, callee, source }) {
  if (type === 'NewExpression') return /Error$/.test(callee.name ?? '');
  if (type === 'CallExpression') return ['describe', 'meta'].includes(callee.property?.name);
  return type === 'ImportDeclaration' || type === 'ImportExpression' || Boolean(source);
}

/** The texts of a program: literals, the pieces of templates, what stands between tags. */
function textsIn(program) {
  const texts = [];
  const visit = (node) => {
    if (isForProgrammers(node) || node.type === 'TSLiteralType') return;
    if (node.type === 'Literal' && typeof node.value === 'string') texts.push([node.start, node.value]);
    if (node.type === 'TemplateElement') texts.push([node.start, node.value.cooked ?? '']);
    if (node.type === 'JSXText') texts.push([node.start, node.value]);
    for (const child of childrenOf(node)) visit(child);
  };
  visit(program);
  return texts;
}

function englishIn(tree, path, codes) {
  const { program, text } = sourceOf(tree, path);
  return textsIn(program)
    .filter(([, said]) => isEnglish(said) && !codes.has(said))
    .map(([start, said]) => `${path}:${lineOf(text, start)}: speaks English: "${said.trim().slice(0, 40)}"`);
}

/** The words of literal types: a text that is one of them is a code, however it reads. */
function codesOf(tree, paths) {
  const codes = new Set();
  for (const path of paths)
    walk(sourceOf(tree, path).program, (node) => {
      if (node.type === 'TSLiteralType') codes.add(node.literal.value);
    });
  return codes;
}

/** Every English text outside the words room. */
export function checkEnglish(tree) {
  const paths = tree.paths.filter(
    (path) => isSource(path) && ROOM.test(path) && !WORDS.test(path) && !TEST.test(path),
  );
  const codes = codesOf(tree, paths);
  return paths.filter((path) => !FREE.has(path)).flatMap((path) => englishIn(tree, path, codes));
}
