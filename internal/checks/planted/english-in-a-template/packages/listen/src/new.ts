/** Why. */
export function why(beats: string): string {
  return `${beats} too few in this bar`;
}
