/** Twice a number. @example twice(2) // 5 */
export function twice(value: number): number {
  return 2 * value;
}
