/** No machine's paths, no unfinished marks, no private hosts in what is committed. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { textOf } from './files.mjs';

const FORBIDDEN = [
  [/(?<![\w.])\/(?:work|home|root|Users)\/\w/, 'a path of one machine'],
  [/\b(?:TODO|FIXME|XXX)\b/, 'an unfinished mark'],
  [/"resolved":\s*"https?:/, 'a registry host'],
];

/** Every tracked text file with a forbidden word, as `path: what`. */
export function checkWords(root) {
  const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
    .trim()
    .split('\n')
    .filter((path) => existsSync(join(root, path)));
  const texts = tracked.filter((path) =>
    /\.(?:[cm]?[jt]sx?|json|ya?ml|md|css|html|sh|py)$|^\.ci\//.test(path),
  );
  return texts
    .filter((path) => path !== 'internal/checks/words.mjs' && !path.startsWith('internal/fixtures/'))
    .flatMap((path) => {
      const text = textOf(root, path);
      return FORBIDDEN.filter(([pattern]) => pattern.test(text)).map(([, what]) => `${path}: has ${what}`);
    });
}
