/**
 * Licences of what a user installs: none may ask more of somebody who passes Shedbook on than to say whose work it is
 * and to keep changes to that work itself open. Read from the lock file, so that what a package brings counts as well.
 */

/** SPDX names: permissive ones, and those whose conditions end at the library's own files. */
const ALLOWED = new Set([
  ...['0BSD', 'Apache-2.0', 'BlueOak-1.0.0', 'BSD-2-Clause', 'BSD-3-Clause', 'CC0-1.0', 'ISC', 'MIT'],
  ...['LGPL-3.0-or-later', 'MPL-2.0', 'OFL-1.1', 'Unlicense', 'Zlib'],
]);

/** Packages whose manifest names no licence, with that of their LICENSE file. */
const READ_BY_HAND = { 'png-js': 'MIT' };

/** Whether an SPDX expression leaves a choice that is allowed; an unknown form is none. */
function isAllowed(expression) {
  const bare = expression.replaceAll(/[()]/g, '');
  return bare.split(' OR ').some((choice) => choice.split(' AND ').every((each) => ALLOWED.has(each)));
}

/** Where Node finds a package that another one asks for: beside it, or in a folder above. */
function placeOf(packages, from, name) {
  const above = from
    .split('/node_modules/')
    .map((_, i, parts) => parts.slice(0, parts.length - i).join('/node_modules/'));
  return [...above.map((folder) => `${folder}/node_modules/${name}`), `node_modules/${name}`].find(
    (place) => packages[place],
  );
}

/** Places of everything that is installed with the package, what its dependencies bring as well. */
function installed(packages) {
  const places = new Set();
  const visit = (from) => {
    const { dependencies, optionalDependencies } = packages[from] ?? {};
    for (const name of Object.keys({ ...dependencies, ...optionalDependencies })) {
      const place = placeOf(packages, from, name);
      if (!place || places.has(place)) continue;
      places.add(place);
      visit(place);
    }
  };
  visit('');
  return [...places];
}

/** Packages that users install under a licence that is not allowed, or under none. */
export function checkLicences(tree) {
  if (!tree.has('package-lock.json')) return [];
  const { packages = {} } = JSON.parse(tree.read('package-lock.json'));
  return installed(packages).flatMap((place) => {
    const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
    const licence = packages[place].license ?? READ_BY_HAND[name];
    if (licence === undefined) return [`package-lock.json: ${name} names no licence`];
    return isAllowed(licence) ? [] : [`package-lock.json: users may not be handed ${name}: ${licence}`];
  });
}
