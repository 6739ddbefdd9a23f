/** Runs every check; prints each problem and exits with 1 when there is one. */
import { checkApi } from './api.mjs';
import { isPending } from './pending.mjs';
import { problemsOf } from './problems.mjs';
import { checkReference } from './reference.mjs';
import { projectTree, ROOT } from './tree.mjs';

const tree = projectTree(ROOT);
const found = [...problemsOf(tree), ...checkApi(tree), ...(await checkReference(tree))];
const pending = found.filter(isPending);
const problems = found.filter((problem) => !isPending(problem));
if (process.argv.includes('--pending')) for (const problem of pending) console.log(problem);
for (const problem of problems) console.error(problem);
if (pending.length > 0)
  console.log(`${pending.length} known faults are being mended (--pending lists them).`);
console.log(
  problems.length === 0
    ? 'Rooms, rules, docs, words, surfaces and reference: all in order.'
    : `${problems.length} problems.`,
);
process.exit(problems.length === 0 ? 0 : 1);
