/**
 * The public surface of each package, as its compiled declarations have it: `api.md`, one line an export with the first
 * sentence of its doc comment, so that a change of surface is seen in review. With `--write` the reports are written
 * anew; the check fails where a committed one differs.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseSync } from 'oxc-parser';
import { docAbove } from './docs/comments.mjs';
import { exportsOf } from './docs/exports.mjs';
import { workspacesOf } from './rooms/house.mjs';
import { manifestOf, projectTree, ROOT } from './tree.mjs';

const COMMAND = 'node internal/checks/api.mjs --write';

/** A signature longer than this is cut, and a fingerprint of the whole stands behind it. */
const LONGEST = 240;

const parsed = new Map();

function declarationsIn(file) {
  if (!parsed.has(file)) {
    const text = readFileSync(file, 'utf8');
    parsed.set(file, { ...parseSync(file, text, { range: true }), text });
  }
  return parsed.get(file);
}

function fileOf(from, specifier) {
  return join(dirname(from), specifier.replace(/\.(?:ts|js)(x?)$/, '.d.ts'));
}

/** Everything that a declaration file exports: name and the file and statement that declare it. */
function surfaceOf(file) {
  const source = declarationsIn(file);
  const own = exportsOf(source).map((each) => ({ ...each, source }));
  const handed = source.program.body.flatMap((statement) => {
    if (!statement.source?.value.startsWith('.')) return [];
    if (statement.type === 'ExportAllDeclaration') return surfaceOf(fileOf(file, statement.source.value));
    if (statement.type !== 'ExportNamedDeclaration') return [];
    const there = surfaceOf(fileOf(file, statement.source.value));
    return statement.specifiers.flatMap(({ local, exported }) =>
      there.filter(({ name }) => name === local.name).map((each) => ({ ...each, name: exported.name })),
    );
  });
  return [...own, ...handed];
}

function withoutComments({ text, comments }, node) {
  const inside = comments.filter(({ start, end }) => start >= node.start && end <= node.end);
  return inside
    .toReversed()
    .reduce(
      (kept, { start, end }) => kept.slice(0, start - node.start) + kept.slice(end - node.start),
      text.slice(node.start, node.end),
    );
}

/** A declaration on one line, without what every declaration has. */
function signatureOf({ source, statement, node }) {
  const isOneOfMany = node.type === 'VariableDeclarator';
  const text = withoutComments(source, isOneOfMany ? node : statement)
    .replace(/^export\s+|\bdeclare\s+|\breadonly\s+/g, '')
    .replace(/\s+/g, ' ')
    .replace(/;( \}|$)/g, '$1')
    .trim();
  const whole = isOneOfMany ? `const ${text}` : text;
  if (whole.length <= LONGEST) return whole;
  const print = createHash('sha256').update(whole).digest('hex').slice(0, 8);
  return `${whole.slice(0, LONGEST)} … (${whole.length} characters, ${print})`;
}

/** First sentence of a doc comment. */
function sentenceOf({ source, statement }) {
  const words = (docAbove(source, statement.start) ?? '')
    .replace(/^\s*\*+ ?/gm, '')
    .replace(/\s+/g, ' ')
    .trim();
  const [first] = words.split(/ ?@\w/);
  return /^.*?[.:;](?=\s|$)/.exec(first)?.[0] ?? first;
}

function reportOf(manifest, entries) {
  const lines = entries
    .flatMap(surfaceOf)
    .map((each) => `- \`${signatureOf(each).replaceAll('`', "'")}\` ${sentenceOf(each)}`.trim());
  const sorted = [...new Set(lines)].sort();
  return [
    `# ${manifest.name}`,
    '',
    `${manifest.description}. Written by \`${COMMAND}\`.`,
    '',
    ...sorted,
    '',
  ].join('\n');
}

/** The report of each workspace that others may import, by the report's path. */
function generate(tree) {
  const entries = workspacesOf(tree).flatMap((workspace) => {
    const manifest = manifestOf(tree, workspace);
    const types = Object.values(manifest.exports ?? {}).flatMap((each) => each.types ?? []);
    const files = types.map((path) => tree.fileOf(join(workspace, path))).filter((path) => existsSync(path));
    return files.length > 0 ? [[`${workspace}/api.md`, reportOf(manifest, files)]] : [];
  });
  return new Map(entries);
}

/** What is declared but not there, so that nothing can be said of it. */
function uncompiled(tree) {
  return workspacesOf(tree).flatMap((workspace) =>
    Object.values(manifestOf(tree, workspace).exports ?? {})
      .flatMap((each) => each.types ?? [])
      .filter((path) => !existsSync(tree.fileOf(join(workspace, path))))
      .map((path) => `${workspace}/package.json: ${path} is not compiled; run npx tsc -b`),
  );
}

/** Reports that differ from what is compiled, and what is not compiled. */
export function checkApi(tree) {
  const differing = [...generate(tree)]
    .filter(([path, text]) => !tree.has(path) || tree.read(path) !== text)
    .map(([path]) => `${path}: differs from the package's surface; run ${COMMAND}`);
  return [...uncompiled(tree), ...differing];
}

if (import.meta.url === pathToFileURL(process.argv[1]).href && process.argv.includes('--write'))
  for (const [path, text] of generate(projectTree(ROOT))) writeFileSync(join(ROOT, path), text);
