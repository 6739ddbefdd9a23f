/** Every check that looks at files alone, so that planted trees go through the same ones as the house. */
import { checkAssertions } from './assertions.mjs';
import { checkDocs } from './docs/docs.mjs';
import { checkExamples } from './docs/examples.mjs';
import { checkEnglish } from './english.mjs';
import { checkFacts } from './facts.mjs';
import { checkLicences } from './licences.mjs';
import { checkRooms } from './rooms/rooms.mjs';
import { checkSpec } from './spec.mjs';
import { checkWords } from './words.mjs';

/** Every problem of a tree, as `path:line: what is wrong`. */
export function problemsOf(tree) {
  const checks = [checkRooms, checkSpec, checkAssertions, checkDocs, checkExamples, checkWords];
  return [...checks, checkFacts, checkEnglish, checkLicences].flatMap((check) => check(tree));
}
