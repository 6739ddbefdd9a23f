/** A list with one of its items a place earlier (-1) or later (1); the list itself where there is no such place. */
export function withTurn<Item>(items: readonly Item[], from: number, by: -1 | 1): readonly Item[] {
  const moved = items[from];
  const to = from + by;
  if (moved === undefined || to < 0 || to >= items.length) return items;
  return items.toSpliced(from, 1).toSpliced(to, 0, moved);
}
