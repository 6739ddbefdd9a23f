/** The examples in doc comments: `@example expression // result`. */
import { zoneOf } from '../rooms/house.mjs';
import { isSource, lineOf, sourceOf } from '../source.mjs';

/** @typedef {{ path: string, line: number, expression: string, result: string | null }} Example */

const TAG = /@example\s+([\s\S]*?)(?=\n\s*\*?\s*@\w|$)/g;

function examplesIn(path, { comments, text }) {
  const docs = comments.filter(({ type, value }) => type === 'Block' && value.startsWith('*'));
  return docs.flatMap(({ value, start }) =>
    [...value.matchAll(TAG)].map((match) => {
      const said = match[1].replace(/\n\s*\* ?/g, ' ').trim();
      const [expression, result = null] = said.split(/\s+\/\/\s+/);
      return { path, line: lineOf(text, start + 2 + match.index), expression, result };
    }),
  );
}

/** Every example of what ships in a tree. */
export function examplesOf(tree) {
  return tree.paths
    .filter((path) => isSource(path) && zoneOf(path) === 'shipped')
    .flatMap((path) => examplesIn(path, sourceOf(tree, path)));
}

/** Examples that do not say what comes out. */
export function checkExamples(tree) {
  return examplesOf(tree)
    .filter(({ result }) => result === null || result === '')
    .map(({ path, line }) => `${path}:${line}: an example without its result; write: expression // result`);
}
