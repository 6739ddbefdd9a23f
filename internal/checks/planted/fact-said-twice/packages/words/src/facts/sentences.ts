/** Takes sentences. */
export function sentences<F>(): (of: Readonly<Record<string, string>>) => F | null {
  return () => null;
}
