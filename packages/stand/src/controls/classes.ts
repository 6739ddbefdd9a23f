/** Class names in one line, those that are missing left out. */
export function classes(...names: readonly (string | false | undefined)[]): string {
  return names.filter(Boolean).join(' ');
}
