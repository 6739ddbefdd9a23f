/**
 * What a mark means on a voice: a written mark may change the sound it asks for.
 *
 * Which marks a voice knows is a table, with its source.
 */
import { isAccent, isStruck, type Letter, letterOf, type Mark } from '../rhythm/cell.ts';
import { MARKED, type TurnedVoice } from './marked.data.ts';
import { ARTICULATIONS, VOICES, type Voice, type WrittenArticulation } from './voice.ts';

/** How a voice is struck. */
export interface Strike {
  /** The voice that sounds: `o` on `hihat` is `hihat-open`, `s` on `snare` is `sidestick`. */
  readonly voice: Voice;
  readonly articulation: WrittenArticulation;
  readonly accent: boolean;
  readonly ghost: boolean;
}

/** Whether a mark asks for a way of striking, and not for another voice: a splash of the foot is no splash cymbal. */
function isManner(asked: TurnedVoice | WrittenArticulation): asked is WrittenArticulation {
  return (ARTICULATIONS as readonly string[]).includes(asked);
}

function voiceAndArticulation(voice: Voice, letter: Letter): readonly [Voice, WrittenArticulation] | null {
  if (letter === 'x' || letter === 'g') return [voice, 'normal'];
  const asked = MARKED[voice][letter];
  if (asked === null) return null;
  return isManner(asked) ? [voice, asked] : [asked, 'normal'];
}

/** What a voice writes with its marks, to that voice; the first of the list of voices where there are several. */
const HOMES: ReadonlyMap<Voice, Voice> = new Map(
  VOICES.toReversed().flatMap((home) =>
    Object.values(MARKED[home]).flatMap((asked) =>
      asked === null || asked === home || isManner(asked) ? [] : [[asked, home] as const],
    ),
  ),
);

/** The voice under which another one is written with a mark: the snare for its side stick, else null. */
export function homeOf(voice: Voice): Voice | null {
  return HOMES.get(voice) ?? null;
}

/** Voices of one thing that one limb strikes, where there are several: the one that the others are written under first. */
export const SHARED_SURFACES: readonly (readonly Voice[])[] = VOICES.map((home) => [
  home,
  ...VOICES.filter((voice) => homeOf(voice) === home),
]).filter((voices) => voices.length > 1);

/** What `mark` on `voice` asks for, or null when the voice cannot be played so (or nothing is struck). */
export function strikeOf(voice: Voice, mark: Mark): Strike | null {
  const letter = letterOf(mark);
  const meant = letter && voiceAndArticulation(voice, letter);
  if (!meant) return null;
  return { voice: meant[0], articulation: meant[1], accent: isAccent(mark), ghost: mark === 'g' };
}

/** Ways of striking that sound as long as they are held: what `~` stands after. */
const GOING_ON: readonly string[] = ['buzz', 'sweep'] satisfies readonly WrittenArticulation[];

/** Whether what `mark` asks of `voice` can go on in the slots after it: a roll on a drum, a sweep of the brush. */
export function goesOn(voice: Voice, mark: Mark): boolean {
  return GOING_ON.includes(strikeOf(voice, mark)?.articulation ?? '');
}

/** The marks that a voice can be written with, in the order of the table of marks. */
export function marksFor(voice: Voice, marks: readonly Mark[]): readonly Mark[] {
  return marks.filter((mark) => mark === '.' || strikeOf(voice, mark) !== null);
}

/**
 * The mark as a voice can play it: one that it does not know becomes a plain stroke, an accent stays one; nothing is held
 * by a voice that has no roll.
 */
export function markFor(voice: Voice, mark: Mark): Mark {
  if (mark === '~' && !goesOn(voice, 'b')) return '.';
  if (!isStruck(mark) || strikeOf(voice, mark)) return mark;
  return isAccent(mark) ? 'X' : 'x';
}
