/**
 * What the oldest browsers have, by the compatibility data of MDN.
 *
 * Conventions: a part of the platform is named as in the data, e.g. `api.Navigator.wakeLock`.
 * Source: @mdn/browser-compat-data, schema of a support statement.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { isAtMost } from './oldest.mjs';

const DATA = createRequire(import.meta.url).resolve('@mdn/browser-compat-data');

let read = null;

/** The whole data. */
export function compatData() {
  read ??= JSON.parse(readFileSync(DATA, 'utf8'));
  return read;
}

/** The entry of a part of the platform, or undefined. */
export function entryOf(name) {
  return name.split('.').reduce((entry, key) => entry?.[key], compatData());
}

/** Whether a statement says that a plain call works from a version on. */
function isPlain({
  version_added,
  version_removed,
  flags,
  prefix,
  alternative_name,
  partial_implementation,
}) {
  return (
    typeof version_added === 'string' &&
    version_added !== 'preview' &&
    ![version_removed, flags, prefix, alternative_name, partial_implementation].some(Boolean)
  );
}

/** The first version of a browser that has a part of the platform, or null. */
export function firstVersion(compat, browser) {
  const statements = [compat.support[browser] ?? []].flat().filter(isPlain);
  const versions = statements.map((each) => each.version_added.replace('≤', ''));
  return versions.sort((a, b) => (isAtMost(a, b) ? -1 : 1))[0] ?? null;
}

/**
 * The browsers of a table that lack a part of the platform in their oldest version, e.g. `safari 16.4 (has it from 17)`.
 * @param oldest versions by the data's own names
 */
export function lackedBy(compat, oldest) {
  return Object.entries(oldest).flatMap(([browser, version]) => {
    const first = firstVersion(compat, browser);
    if (first !== null && isAtMost(first, version)) return [];
    return [`${browser} ${version} (${first === null ? 'has it in no version' : `has it from ${first}`})`];
  });
}
