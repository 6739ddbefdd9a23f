/**
 * The word for a name, or the name itself where a teacher has made it up.
 * @example nameIn({ loop: 'Schleife' }, 'my own') // 'my own'
 */
export function nameIn(words: Readonly<Record<string, string>>, name: string): string {
  return words[name] ?? name;
}
