/**
 * Rules and tests match: every rule of a SPEC.md has a test whose title cites it, and every test cites a rule.
 */
import { isTest, workspaceOf } from './tree.mjs';

const RULE = /^\s*[-*]\s+\*{0,2}\[([A-Z]{2}\d+)\]/gm;
const CITED = /\[([A-Z]{2}\d+)\]/g;
const TEST = /\b(?:it|test)(?:\.(?:each|concurrent)(?:\([^`'"]*?\))?)?\(\s*(['"`])((?:(?!\1)[\s\S])*)\1/g;
const LEFT_OUT = /\b(?:it|test|describe)\.(?:skip|todo|only|fails)\b/;

function cited(text) {
  return [...text.matchAll(CITED)].map((match) => match[1]);
}

/** The title of a test over a table, whatever the table holds. */
const TABLE_TITLE = /\)\(\s*(['"`])(\[[A-Z]{2}\d+\](?:(?!\1)[\s\S])*)\1/g;

/** Titles of the tests in a source text. */
export function testTitles(text) {
  const titles = [TEST, TABLE_TITLE].flatMap((pattern) =>
    [...text.matchAll(pattern)].map((match) => match[2]),
  );
  return [...new Set(titles)];
}

function rulesOf(tree, spec) {
  return [...tree.read(spec).matchAll(RULE)].map((match) => match[1]);
}

/** What is wrong in one test file, and the rules that it cites. */
function readTests(tree, path, rules) {
  const text = tree.read(path);
  const problems = LEFT_OUT.test(text)
    ? [`${path}: has a test that is skipped, singled out or expected to fail`]
    : [];
  const titles = testTitles(text).map((title) => ({ title, ids: cited(title) }));
  const unknown = titles.flatMap(({ title, ids }) => {
    if (ids.length === 0) return [`${path}: "${title}" cites no rule`];
    const missing = ids.filter((id) => !rules.has(id));
    return missing.map((id) => `${path}: "${title}" cites [${id}], which no SPEC.md has`);
  });
  return { problems: [...problems, ...unknown], ids: titles.flatMap(({ ids }) => ids) };
}

/** Every mismatch of rules and tests. An id is one rule in the whole house, so that a test may cite any room's. */
export function checkSpec(tree) {
  const paths = tree.paths.filter((path) => workspaceOf(path) !== null);
  const tests = paths.filter(isTest);
  const specs = paths.filter((path) => /^(?:packages|apps)\/[^/]+\/SPEC\.md$/.test(path));
  const stated = specs.flatMap((spec) => rulesOf(tree, spec).map((rule) => ({ spec, rule })));
  const rules = new Set(stated.map(({ rule }) => rule));
  const twice = stated.filter(({ rule }, i) => stated.findIndex((each) => each.rule === rule) !== i);
  const read = tests.map((path) => readTests(tree, path, rules));
  const tested = new Set(read.flatMap(({ ids }) => ids));
  const bare = [...new Set(tests.map(workspaceOf))].filter((each) => !specs.includes(`${each}/SPEC.md`));
  return [
    ...bare.map((workspace) => `${workspace}: has tests but no SPEC.md`),
    ...twice.map(({ spec, rule }) => `${spec}: [${rule}] twice`),
    ...read.flatMap(({ problems }) => problems),
    ...stated
      .filter(({ rule }) => !tested.has(rule))
      .map(({ spec, rule }) => `${spec}: [${rule}] has no test`),
  ];
}
