/** The oldest browsers by the names that the compatibility data of MDN gives them, and the order of versions. */

/** Names in the data, by the table's. */
const DATA_NAMES = {
  chrome: ['chrome', 'chrome_android'],
  edge: ['edge'],
  firefox: ['firefox', 'firefox_android'],
  safari: ['safari'],
  ios_saf: ['safari_ios'],
};

/** The oldest version of each browser, by its name in the data. @param table as package.json has it */
export function oldestInData(table) {
  return Object.fromEntries(
    Object.entries(table).flatMap(([name, version]) => DATA_NAMES[name].map((each) => [each, version])),
  );
}

/** Whether a version is the same as another or older; `≤37` is at most 37. */
export function isAtMost(version, other) {
  const numbers = (text) => text.replace('≤', '').split('.').map(Number);
  const [a, b] = [numbers(version), numbers(other)];
  const at = [0, 1, 2].find((i) => (a[i] ?? 0) !== (b[i] ?? 0));
  return at === undefined || (a[at] ?? 0) < (b[at] ?? 0);
}
