import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync, Visitor } from 'oxc-parser';
import { preprocessCSS, resolveConfig } from 'vite';
import { expect, it } from 'vitest';

const HOUSE = fileURLToPath(new URL('../../../../', import.meta.url));

/** Folders whose components have stylesheets of their own. */
const DRESSED = ['packages/stand/src', 'apps/desk/src', 'apps/practice/src'];

const files = DRESSED.flatMap((folder) =>
  readdirSync(join(HOUSE, folder), { recursive: true, encoding: 'utf8' }).map((file) => join(folder, file)),
);

/** Classes that a component names, by stylesheet; null for a stylesheet that it also reaches into by a computed name. */
function namedIn(path: string): ReadonlyMap<string, readonly (string | null)[]> {
  const { program } = parseSync(path, readFileSync(join(HOUSE, path), 'utf8'));
  const sheets = new Map<string, string>();
  const named = new Map<string, (string | null)[]>();
  new Visitor({
    ImportDeclaration({ source, specifiers }) {
      const [only] = specifiers;
      if (!source.value.endsWith('.module.css') || only?.type !== 'ImportDefaultSpecifier') return;
      const sheet = join(dirname(path), source.value);
      sheets.set(only.local.name, sheet);
      named.set(sheet, []);
    },
    MemberExpression({ object, property, computed }) {
      const sheet = object.type === 'Identifier' ? sheets.get(object.name) : undefined;
      if (sheet === undefined) return;
      named.get(sheet)?.push(!computed && property.type === 'Identifier' ? property.name : null);
    },
  }).visit(program);
  return named;
}

/** What does not fit between the components and their stylesheets, one line each. */
async function misfits(): Promise<readonly string[]> {
  const config = await resolveConfig({ configFile: false, root: HOUSE, logLevel: 'error' }, 'build');
  const uses = files
    .filter((path) => /\.tsx?$/.test(path))
    .flatMap((path) => [...namedIn(path)].map(([sheet, names]) => ({ path, sheet, names })));
  const sheets = files.filter((path) => path.endsWith('.module.css'));
  const found = sheets.map(async (sheet) => {
    const css = readFileSync(join(HOUSE, sheet), 'utf8');
    const { modules = {} } = await preprocessCSS(css, join(HOUSE, sheet), config);
    const users = uses.filter((use) => use.sheet === sheet);
    const named = new Set(users.flatMap((use) => use.names));
    const unknown = users.flatMap(({ path, names }) =>
      names.filter((name) => name !== null && !(name in modules)).map((name) => `${path}: no class ${name}`),
    );
    // keyframes have names of their own, which the sheet itself uses
    const moves = [...css.matchAll(/@keyframes (\S+)/g)].flatMap(([, name = '']) =>
      css.includes(`animation: ${name} `) ? [name] : [],
    );
    const worn = new Set([...named, ...moves]);
    const dead = Object.keys(modules).filter((name) => !worn.has(name) && !worn.has(null));
    return [...unknown, ...dead.map((name) => `${sheet}: nobody wears ${name}`)];
  });
  return (await Promise.all(found)).flat();
}

it('[SD1] components name the classes that their stylesheets have, all of them and no other', async () => {
  expect(files.filter((path) => path.endsWith('.module.css')).length).toBeGreaterThan(40);
  // definition: a class that is not there dresses nothing; one that nobody names is dead
  expect(await misfits()).toEqual([]);
});
