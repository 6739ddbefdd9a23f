/**
 * What a workspace declares and what it uses are the same; its test code stays out of what ships; and the table of
 * rooms names every workspace.
 */
import { ROOMS } from '../rooms.data.mjs';
import { isSource, sourceOf, walk } from '../source.mjs';
import { manifestOf, workspaceOf } from '../tree.mjs';
import { houseFiles, roomOf, workspaceNamed, workspacesOf, zoneOf } from './house.mjs';
import { referencesOf } from './references.mjs';
import { isNodeModule, isRelative, packageName } from './resolve.mjs';

/** Tools of every test and check, which the root or `internal` declares. */
function toolsOf(tree) {
  return { ...manifestOf(tree, '').devDependencies, ...manifestOf(tree, 'internal').dependencies };
}

/** Dependencies of a manifest that are there at run time, and all that its tests and types may use besides. */
function declaredBy(tree, workspace) {
  const { name, dependencies, devDependencies, peerDependencies } = manifestOf(tree, workspace);
  const atRunTime = { ...dependencies, ...peerDependencies };
  const inTests = { ...atRunTime, ...devDependencies, ...toolsOf(tree), [name]: '' };
  return { atRunTime, inTests };
}

/** A browser room is bundled, so that what it needs for building is as good as installed. */
function isBundled(workspace) {
  return roomOf(workspace)?.platform === 'browser';
}

/** A package imported without being declared where it is needed. */
function undeclared(tree, workspace, files) {
  const { atRunTime, inTests } = declaredBy(tree, workspace);
  return files.flatMap((path) =>
    referencesOf(tree, path).flatMap(({ specifier, typeOnly, line }) => {
      if (isRelative(specifier) || isNodeModule(specifier) || specifier.startsWith('virtual:')) return [];
      const name = packageName(specifier);
      const isLoose = zoneOf(path) !== 'shipped' || typeOnly || isBundled(workspace);
      return name in (isLoose ? inTests : atRunTime)
        ? []
        : [`${path}:${line}: imports an undeclared package: ${name}`];
    }),
  );
}

/** Names of packages that a file mentions: what it imports, and strings that begin with a package's name. */
function mentionedIn(tree, path) {
  const names = new Set();
  if (!isSource(path)) {
    for (const [, text] of tree.read(path).matchAll(/["']([@\w][^"'\n]*)["']/g)) names.add(packageName(text));
    return names;
  }
  for (const { specifier } of referencesOf(tree, path)) names.add(packageName(specifier));
  walk(sourceOf(tree, path).program, (node) => {
    if (node.type === 'Literal' && typeof node.value === 'string') names.add(packageName(node.value));
  });
  return names;
}

/** `@types/x` is used where `x` is; `@types/a__b` where `@a/b` is. */
function typedPackage(name) {
  const typed = name.replace(/^@types\//, '');
  return typed.includes('__') ? `@${typed.replace('__', '/')}` : typed;
}

/** A declared package that nothing in the workspace names. */
function unused(tree, workspace) {
  const { dependencies, devDependencies } = manifestOf(tree, workspace);
  const files = tree.paths.filter(
    (path) =>
      path.startsWith(`${workspace}/`) && (isSource(path) || /(?:\.css|\.html|\/tsconfig\.json)$/.test(path)),
  );
  const named = new Set(files.flatMap((path) => [...mentionedIn(tree, path)]));
  return Object.keys({ ...dependencies, ...devDependencies })
    .filter((name) => !named.has(typedPackage(name)))
    .map((name) => `${workspace}/package.json: declares ${name}, which nothing imports`);
}

/** The compiler's list of rooms under this one is what the manifest declares. */
function referenceFaults(tree, workspace) {
  const path = `${workspace}/tsconfig.json`;
  if (!tree.has(path)) return [];
  const { dependencies } = manifestOf(tree, workspace);
  const declared = Object.keys(dependencies ?? {})
    .map(workspaceNamed)
    .filter((each) => each !== null);
  const referred = (JSON.parse(tree.read(path)).references ?? []).map((each) =>
    each.path.replace(/^\.\.\/(?=[^.])/, `${workspace.split('/')[0]}/`).replace(/^\.\.\/\.\.\//, ''),
  );
  return [
    ...declared
      .filter((each) => !referred.includes(each))
      .map((each) => `${path}: has no reference to ${each}`),
    ...referred
      .filter((each) => !declared.includes(each))
      .map((each) => `${path}: refers to ${each}, which package.json does not declare`),
  ];
}

const TEST_FOLDER = /^src\/(?:.*\/)?(testing|tests?|__tests__|fixtures|mocks?)\//;

/** Test code that would ship: a folder of helpers in `src`, or tests that the compiler is not told to leave out. */
function shippedTests(tree, workspace) {
  const inside = tree.paths
    .filter((path) => path.startsWith(`${workspace}/src/`))
    .map((path) => path.slice(workspace.length + 1));
  const folders = new Set(
    inside.filter((path) => TEST_FOLDER.test(path)).map((path) => path.replace(/\/[^/]*$/, '')),
  );
  const path = `${workspace}/tsconfig.json`;
  const { exclude = [] } = tree.has(path) ? JSON.parse(tree.read(path)) : {};
  const endings = new Set(inside.flatMap((each) => /\.(?:test|bench)\.tsx?$/.exec(each) ?? []));
  return [
    ...[...folders].map(
      (each) => `${workspace}/${each}: test code in src would ship; keep it in ${workspace}/test`,
    ),
    ...[...endings]
      .filter((ending) => !exclude.includes(`src/**/*${ending}`))
      .map((ending) => `${path}: compiles tests into what ships; exclude src/**/*${ending}`),
  ];
}

/** Every workspace has its row, every row its workspace. */
function tableFaults(tree, workspaces) {
  const known = ROOMS.map(({ name }) => name);
  const folders = [...new Set(tree.paths.map(workspaceOf))].filter((each) => each !== null);
  return [
    ...folders.filter((each) => !known.includes(each)).map((each) => `${each}: is not in the table of rooms`),
    ...known
      .filter((each) => !workspaces.includes(each))
      .map((each) => `${each}: is in the table of rooms but has no package.json`),
  ];
}

/** Every fault of a workspace as a whole. */
export function checkWorkspaces(tree) {
  const workspaces = workspacesOf(tree);
  const files = houseFiles(tree);
  return [
    ...tableFaults(tree, workspaces),
    ...workspaces.flatMap((workspace) => [
      ...undeclared(
        tree,
        workspace,
        files.filter((path) => workspaceOf(path) === workspace),
      ),
      ...unused(tree, workspace),
      ...referenceFaults(tree, workspace),
      ...shippedTests(tree, workspace),
    ]),
  ];
}
