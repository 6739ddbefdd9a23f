/** Runs every check; prints each problem and exits with 1 when there is one. */
import { checkApi } from './api.mjs';
import { checkBenches } from './benches.mjs';
import { checkBrowsers } from './browsers/browsers.mjs';
import { problemsOf } from './problems.mjs';
import { checkReference } from './reference.mjs';
import { checkRoutes } from './routes.mjs';
import { projectTree, ROOT } from './tree.mjs';

const benches = checkBenches();
const tree = projectTree(ROOT);
const problems = [
  ...problemsOf(tree),
  ...checkApi(tree),
  ...checkBrowsers(tree),
  ...(await checkReference(tree)),
  ...(await checkRoutes(tree)),
  ...(await benches),
];
for (const problem of problems) console.error(problem);
console.log(
  problems.length === 0
    ? 'Rooms, rules, docs, words, surfaces, reference, benches and browsers: all in order.'
    : `${problems.length} problems.`,
);
process.exit(problems.length === 0 ? 0 : 1);
