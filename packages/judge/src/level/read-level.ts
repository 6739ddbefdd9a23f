/** Reading a level that was kept or typed. */
import { FORMER_NAMES, LEVELS, type Level } from './levels.data.ts';

/**
 * The level of a name, also of one that levels had before; null of anything else.
 * @example readLevel('growing') // 'intermediate'
 */
export function readLevel(name: unknown): Level | null {
  if (typeof name !== 'string') return null;
  return LEVELS.find((level) => level === name) ?? FORMER_NAMES.get(name) ?? null;
}
