/** Which beat is heard. */
import type { Program, ProgramBeat } from './program.ts';

/** Places closer than this are the same, in whole notes. */
const SAME = 1e-9;

/** The beat that a place lies in, count-in included (bars 0, −1, …); null before the first. */
export function beatAt(program: Program, place: number): ProgramBeat | null {
  const countIn = program.strokes
    .filter((each) => each.role === 'count-in')
    .map(({ place: at, written: { bar, beat } }) => ({ place: at, bar, beat }));
  return [...countIn, ...program.beats].findLast((each) => each.place <= place + SAME) ?? null;
}
