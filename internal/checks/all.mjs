/** Runs every check; prints each problem and exits with 1 when there is one. */
import { checkDocs } from './docs.mjs';
import { ROOT } from './files.mjs';
import { checkReference } from './reference.mjs';
import { checkRooms } from './rooms.mjs';
import { checkSpec } from './spec.mjs';
import { checkWords } from './words.mjs';

const problems = [
  ...[checkRooms, checkSpec, checkDocs, checkWords].flatMap((check) => check(ROOT)),
  ...(await checkReference(ROOT)),
];
for (const problem of problems) console.error(problem);
console.log(
  problems.length === 0
    ? 'Rooms, rules, docs, words and reference: all in order.'
    : `${problems.length} problems.`,
);
process.exit(problems.length === 0 ? 0 : 1);
