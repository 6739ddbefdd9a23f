/** No machine's paths, no unfinished marks, no private hosts in what is committed. */
const FORBIDDEN = [
  [/(?<![\w.])\/(?:work|home|root|Users)\/\w/, 'a path of one machine'],
  [/\b(?:TODO|FIXME|XXX)\b/, 'an unfinished mark'],
  [/"resolved":\s*"https?:/, 'a registry host'],
];

/** Files of other origin, and this one, which has to name what it forbids. */
const FREE = /^(?:internal\/fixtures\/|internal\/checks\/words\.mjs$)/;

/** Every text file with a forbidden word, as `path: what`. */
export function checkWords(tree) {
  return tree.paths
    .filter(
      (path) => /\.(?:[cm]?[jt]sx?|json|ya?ml|md|css|html|sh|py)$|^\.ci\//.test(path) && !FREE.test(path),
    )
    .flatMap((path) => {
      const text = tree.read(path);
      return FORBIDDEN.filter(([pattern]) => pattern.test(text)).map(([, what]) => `${path}: has ${what}`);
    });
}
