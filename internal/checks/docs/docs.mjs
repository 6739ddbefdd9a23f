/**
 * Every export of a package or an app has a doc comment; every number in an exported type, or among the properties of
 * an exported component, says its unit.
 */

import { zoneOf } from '../rooms/house.mjs';
import { isSource, lineOf, sourceOf } from '../source.mjs';
import { docAbove } from './comments.mjs';
import { exportsOf, propsOf } from './exports.mjs';
import { unitFaults } from './units.mjs';

function bare(path, source, named) {
  return named
    .filter(({ statement }) => docAbove(source, statement.start) === null)
    .map(
      ({ name, statement }) => `${path}:${lineOf(source.text, statement.start)}: ${name} has no doc comment`,
    );
}

/** Every fault of a tree's doc comments. */
export function checkDocs(tree) {
  const paths = tree.paths.filter(
    (path) => isSource(path) && zoneOf(path) === 'shipped' && !path.endsWith('.d.ts'),
  );
  return paths.flatMap((path) => {
    const source = sourceOf(tree, path);
    const exports = exportsOf(source);
    return [...bare(path, source, exports), ...unitFaults(path, source, [...exports, ...propsOf(source)])];
  });
}
