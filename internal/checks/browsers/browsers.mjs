/**
 * The pages as they were built last, against the oldest browsers that they are for: syntax, platform, styles, and what
 * README says of them.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { oldestBrowsers } from '../../../scripts/pages/oldest-browsers.mjs';
import { manifestOf, ROOT } from '../tree.mjs';
import { oldestInData } from './oldest.mjs';
import { lackedByScript, syntaxOf } from './script.mjs';
import { lackedByStyle } from './style.mjs';

/** What is let be where a page uses it, and why. */
const ALLOWED = new Map([
  ['.adopt()', 'the desk’s own: a lesson that is taken over'],
  ['.copyTo()', 'of what a decoder of the browser gave, which the file asks for'],
  ['.move()', 'the composer’s own: how hard a move is'],
  ['.startViewTransition()', 'React’s, for transitions that nobody asks it for'],
  ['.take()', 'our own readers of bytes and fields of screens'],
  ['.use()', 'React’s own'],
  ['.when()', 'the schemas’ own: whether a rule is looked at'],
  [
    'window.devicePixelRatio',
    'always there; Safari’s does not follow the zoom of a page, which is for people to read',
  ],
  ['Intl.Segmenter', 'of films, which ask first for an encoder of video that every browser had later'],
  ['AbortSignal.timeout', 'there since Chrome 103; nobody reads how the error of a timeout is called'],
]);

const SITES = ['apps/desk/dist/site', 'apps/practice/dist/site'];

/** The built files of a folder, as paths from the root; none where nothing was built. */
function filesIn(root, folder) {
  const at = join(root, folder);
  if (!existsSync(at)) return [];
  return readdirSync(at, { recursive: true })
    .map((name) => join(folder, name))
    .sort();
}

/** The scripts that stand in a page run in every browser there ever was: they say that it is too old. */
function lackedByPage(text) {
  const scripts = [...text.matchAll(/<script>([\s\S]*?)<\/script>/g)];
  return scripts.flatMap(([, script]) => syntaxOf(script, 3));
}

/** What one built file asks that the oldest browsers lack. */
function lackedByFile(path, text, oldest) {
  const allowed = new Set(ALLOWED.keys());
  const lacks = { css: lackedByStyle, js: lackedByScript, html: lackedByPage }[path.split('.').at(-1)];
  return lacks(text, oldest, allowed).map((each) => `${path}: ${each}`);
}

/** How README has to name the table's browsers. */
function sentenceOf({ chrome, edge, firefox, safari, ios_saf }) {
  return `Chrome ${chrome}, Edge ${edge}, Firefox ${firefox} and Safari ${safari} (iOS and iPadOS ${ios_saf})`;
}

/**
 * Every problem of the built pages and of README.
 * @param {import('../tree.mjs').Tree} tree
 * @param root that `sites` lie under
 */
export function checkBrowsers(tree, root = ROOT, sites = SITES) {
  const table = oldestBrowsers(manifestOf(tree, ''));
  const oldest = oldestInData(table);
  const sentence = sentenceOf(table);
  const says = tree.read('README.md').replaceAll(/\s+/g, ' ').includes(sentence);
  const paths = sites
    .flatMap((site) => filesIn(root, site))
    .filter((path) => /\.(?:js|css|html)$/.test(path));
  return [
    ...(says ? [] : [`README.md: does not name the oldest browsers as package.json does: ${sentence}`]),
    ...paths.flatMap((path) => lackedByFile(path, readFileSync(join(root, path), 'utf8'), oldest)),
  ];
}
