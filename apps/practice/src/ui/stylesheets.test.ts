import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';

const SOURCE = join(import.meta.dirname, '..');

/** Class names that the selectors of a stylesheet define. */
function definedIn(css: string): ReadonlySet<string> {
  const selectors = css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/:global\([^)]*\)/g, '')
    .replace(/\{[^{}]*\}/g, '{}')
    .replace(/@[^{]*/g, '');
  return new Set([...selectors.matchAll(/\.([A-Za-z][\w-]*)/g)].map(([, name = '']) => name));
}

/** Class names that code takes from stylesheets, by the path of the sheet. */
function usesIn(path: string): readonly (readonly [sheet: string, name: string])[] {
  const code = readFileSync(path, 'utf8');
  const imports = [...code.matchAll(/import (\w+) from '([^']+\.module\.css)'/g)];
  return imports.flatMap(([, binding = '', specifier = '']) =>
    [...code.matchAll(new RegExp(`\\b${binding}\\.(\\w+)`, 'g'))].map(
      ([, name = '']) => [join(dirname(path), specifier), name] as const,
    ),
  );
}

const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' }).map((path) => join(SOURCE, path));
const uses = files.filter((path) => /(?<!\.test)\.tsx?$/.test(path)).flatMap(usesIn);
const sheets = files.filter((path) => path.endsWith('.module.css'));

it('[ST112] takes no class from a stylesheet that has none of this name, and leaves none in it unused', () => {
  expect(sheets.length).toBeGreaterThan(0);
  for (const sheet of sheets) {
    const used = new Set(uses.filter(([of]) => of === sheet).map(([, name]) => name));
    expect([sheet, ...used].sort()).toEqual([sheet, ...definedIn(readFileSync(sheet, 'utf8'))].sort());
  }
});
