/**
 * Rules and tests match: every rule of a SPEC.md has a test whose title cites it, and every test cites a rule
 * of its workspace.
 */
import { filesUnder, textOf, workspaceOf } from './files.mjs';

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

function checkWorkspace(root, workspace, paths) {
  const spec = paths.find((path) => path === `${workspace}/SPEC.md`);
  const tests = paths.filter((path) => /\.test\.tsx?$/.test(path));
  if (!spec) return tests.length > 0 ? [`${workspace}: has tests but no SPEC.md`] : [];
  const rules = [...textOf(root, spec).matchAll(RULE)].map((match) => match[1]);
  const problems = rules
    .filter((rule, i) => rules.indexOf(rule) !== i)
    .map((rule) => `${spec}: [${rule}] twice`);
  const tested = new Set();
  for (const path of tests) {
    const text = textOf(root, path);
    if (LEFT_OUT.test(text))
      problems.push(`${path}: has a test that is skipped, singled out or expected to fail`);
    for (const title of testTitles(text)) {
      const ids = cited(title);
      for (const id of ids) tested.add(id);
      if (ids.length === 0) problems.push(`${path}: "${title}" cites no rule`);
      for (const id of ids.filter((each) => !rules.includes(each))) {
        problems.push(`${path}: "${title}" cites [${id}], which ${spec} does not have`);
      }
    }
  }
  return [
    ...problems,
    ...rules.filter((rule) => !tested.has(rule)).map((rule) => `${spec}: [${rule}] has no test`),
  ];
}

/** Every mismatch of rules and tests. */
export function checkSpec(root) {
  const paths = filesUnder(root, ['packages', 'apps']);
  const workspaces = [...new Set(paths.map(workspaceOf))].filter((each) => each !== null);
  return workspaces.flatMap((workspace) =>
    checkWorkspace(
      root,
      workspace,
      paths.filter((path) => workspaceOf(path) === workspace),
    ),
  );
}
