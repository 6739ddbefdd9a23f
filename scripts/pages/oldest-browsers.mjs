/**
 * The oldest browsers that the pages are for: one table, `browserslist` of the root's package.json. What pages are built
 * for, what an older browser shows instead, README and the checks all read it here.
 */
import { readFileSync } from 'node:fs';

const MANIFEST = new URL('../../package.json', import.meta.url);

/** Names of the table, with those that the builder gives its targets. */
const TARGETS = { chrome: 'chrome', edge: 'edge', firefox: 'firefox', safari: 'safari', ios_saf: 'ios' };

/** A line of the table, e.g. `safari >= 16.4`. @throws Error where it has another form */
function readLine(line) {
  const [, name, version] = /^(\w+) >= ([\d.]+)$/.exec(line) ?? [];
  if (!TARGETS[name])
    throw new Error(`package.json: browserslist: found "${line}", expected "safari >= 16.4"`);
  return [name, version];
}

/** The oldest version of each browser by its name in the table. @param manifest of the root; read where left out */
export function oldestBrowsers(manifest = JSON.parse(readFileSync(MANIFEST, 'utf8'))) {
  return Object.fromEntries(manifest.browserslist.map(readLine));
}

/** What a page is built for. */
export function buildTargets(oldest) {
  return Object.entries(oldest).map(([name, version]) => TARGETS[name] + version);
}
