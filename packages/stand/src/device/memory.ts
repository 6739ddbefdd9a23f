/** Small choices that the browser remembers: language, light or dark, whether the guide was put away. */

function keyOf(name: string): string {
  return `shedbook.${name}`;
}

/** What was remembered under a name, or null. */
export function remembered(name: string): string | null {
  try {
    return window.localStorage.getItem(keyOf(name));
  } catch {
    return null;
  }
}

/** The names of everything that is remembered. */
export function rememberedNames(): readonly string[] {
  try {
    const start = keyOf('');
    const keys = Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? '');
    return keys.filter((key) => key.startsWith(start)).map((key) => key.slice(start.length));
  } catch {
    return [];
  }
}

/** Remembers a choice; a browser that keeps nothing simply forgets it. */
export function remember(name: string, value: string): void {
  try {
    window.localStorage.setItem(keyOf(name), value);
  } catch {
    // Nothing is kept in this browser: the choice holds until the page is left.
  }
}
