/**
 * Ways to a first sound, the best first. Where one brings no sound in time, what was lacking says which is tried next,
 * so that whoever pressed Play hears something, or is told why not.
 */

/** How it sounds: the whole of it, without the room, with a small kit, or without a sound thread. */
export const WAYS = ['whole', 'no room', 'small kit', 'no thread'] as const;

/** One of the ways. */
export type Way = (typeof WAYS)[number];

/**
 * What did not come in time: a loudspeaker that takes sound, the sound thread, the sounds of the kit, or, where all of
 * them were there, the first stroke.
 */
export type Lack = 'output' | 'thread' | 'kit' | 'stroke';

/** Milliseconds from Play to the first stroke at most, before another way is tried. */
export const START_MS = 4000;

/** The same for each way after the first. */
export const AGAIN_MS = 2000;

/** The way after one that brought no sound; null where no other can help. */
export function nextWay(way: Way, lack: Lack): Way | null {
  if (lack === 'output') return null;
  const least = { kit: 'small kit', stroke: 'no room', thread: 'no thread' } as const;
  const at = Math.max(WAYS.indexOf(way) + 1, WAYS.indexOf(least[lack]));
  return WAYS[at] ?? null;
}
