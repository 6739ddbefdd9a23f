/**
 * What a mark means on a voice: a written mark may change the sound it asks for.
 *
 * Source: common practice of text drum tablature; bell on the ride and splash by the foot are read from the same
 * letters as buzz and open.
 */
import { isAccent, type Mark } from '../rhythm/cell.ts';
import type { Articulation, Voice } from './voice.ts';

/** How a voice is struck. */
export interface Strike {
  /** The voice that sounds: `o` on `hihat` is `hihat-open`, `s` on `snare` is `sidestick`. */
  readonly voice: Voice;
  readonly articulation: Articulation;
  readonly accent: boolean;
  readonly ghost: boolean;
}

const DRUMS: readonly Voice[] = ['snare', 'tom-high', 'tom-mid', 'tom-low'];

function voiceAndArticulation(voice: Voice, letter: string): readonly [Voice, Articulation] | null {
  if (letter === 'x' || letter === 'g') return [voice, 'normal'];
  if (letter === 'f' && DRUMS.includes(voice)) return [voice, 'flam'];
  if (letter === 'd' && DRUMS.includes(voice)) return [voice, 'drag'];
  if (letter === 'b' && DRUMS.includes(voice)) return [voice, 'buzz'];
  if (letter === 'b' && voice === 'ride') return [voice, 'bell'];
  if (letter === 'o' && voice === 'hihat') return ['hihat-open', 'normal'];
  if (letter === 'o' && voice === 'hihat-open') return [voice, 'normal'];
  if (letter === 'o' && voice === 'hihat-foot') return [voice, 'splash'];
  if (letter === 's' && voice === 'snare') return ['sidestick', 'normal'];
  if (letter === 'r' && voice === 'snare') return ['rimshot', 'normal'];
  return null;
}

/** What `mark` on `voice` asks for, or null when the voice cannot be played so (or nothing is struck). */
export function strikeOf(voice: Voice, mark: Mark): Strike | null {
  const meant = voiceAndArticulation(voice, mark.toLowerCase());
  if (!meant) return null;
  return { voice: meant[0], articulation: meant[1], accent: isAccent(mark), ghost: mark === 'g' };
}

/** The marks that a voice can be written with, in the order of the table of marks. */
export function marksFor(voice: Voice, marks: readonly Mark[]): readonly Mark[] {
  return marks.filter((mark) => mark === '.' || strikeOf(voice, mark) !== null);
}
