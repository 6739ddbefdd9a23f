/** What a search by name goes by, the same on the desk and on the server. */

/** A text without capitals and accents, so that `ubung` finds `Übung` and `gross` finds `Groß`. */
export function folded(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toUpperCase().toLowerCase();
}

/** The words that somebody looks for; what is found has every one of them. */
export function wordsSought(text: string): readonly string[] {
  return folded(text).split(/\s+/).filter(Boolean);
}
