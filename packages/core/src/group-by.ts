/** Things in groups, in the order in which each group first comes. (`Map.groupBy` is not in Node 20.) */

/**
 * The groups by their key.
 * @example groupBy([1, 2, 3], (n) => n % 2).get(1) // [1, 3]
 */
export function groupBy<Thing, Key>(
  things: Iterable<Thing>,
  keyOf: (thing: Thing) => Key,
): Map<Key, Thing[]> {
  const groups = new Map<Key, Thing[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}
