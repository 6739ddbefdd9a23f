/** Searching in ascending lists. */

/** The index of the first number in an ascending list that is at least `value`; its length when none is. */
export function firstIndexAtLeast(list: readonly number[], value: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
