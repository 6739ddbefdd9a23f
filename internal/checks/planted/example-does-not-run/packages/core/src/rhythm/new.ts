/** Twice a number. @example twice(ratio) // 4 */
export function twice(value: number): number {
  return 2 * value;
}
