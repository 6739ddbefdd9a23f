/** Every export of a package has a doc comment (the module's own counts for the export that follows it). */
const EXPORT = /^export (?:async )?(?:abstract )?(?:function|const|interface|type|class)\s+(\w+)/;

/** Names exported without a doc comment above them. */
export function undocumented(text) {
  const lines = text.split('\n');
  return lines.flatMap((line, index) => {
    const name = EXPORT.exec(line)?.[1];
    if (!name) return [];
    const above = lines
      .slice(0, index)
      .findLast((each) => each.trim() !== '' && !each.startsWith('// biome-ignore'));
    const documented = above?.trimEnd().endsWith('*/') || isDerived(name, line, lines.slice(0, index));
    return documented ? [] : [name];
  });
}

/** A type taken from the documented constant just above it, such as the union of a table's names. */
function isDerived(_name, line, before) {
  const of = /typeof (\w+)/.exec(line)?.[1];
  return of !== undefined && before.some((each) => each.startsWith(`export const ${of}`));
}

/** Every export without a doc comment, as `path: name`. */
export function checkDocs(tree) {
  const files = tree.paths.filter(
    (path) => /^packages\/[^/]+\/src\/.*\.ts$/.test(path) && !/\.(test|bench)\.ts$/.test(path),
  );
  return files.flatMap((path) =>
    undocumented(tree.read(path)).map((name) => `${path}: ${name} has no doc comment`),
  );
}
