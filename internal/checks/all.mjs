/** Runs every check; prints each problem and exits with 1 when there is one. */
import { checkApi } from './api.mjs';
import { problemsOf } from './problems.mjs';
import { checkReference } from './reference.mjs';
import { checkRoutes } from './routes.mjs';
import { projectTree, ROOT } from './tree.mjs';

const tree = projectTree(ROOT);
const surfaces = checkApi(tree);
const stale = surfaces.filter((problem) => problem.includes('api.md: differs'));
for (const problem of stale) console.log(problem);
const problems = [
  ...problemsOf(tree),
  ...surfaces.filter((problem) => !stale.includes(problem)),
  ...(await checkReference(tree)),
  ...(await checkRoutes(tree)),
];
for (const problem of problems) console.error(problem);
console.log(
  problems.length === 0
    ? 'Rooms, rules, docs, words, surfaces and reference: all in order.'
    : `${problems.length} problems.`,
);
process.exit(problems.length === 0 ? 0 : 1);
