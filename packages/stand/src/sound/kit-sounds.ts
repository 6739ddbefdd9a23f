/** Which sounds of the kit a program needs. */

import type { Program } from '@shedbook/playing';
import { type SoundName, soundsOfStroke } from '@shedbook/sound';

/** Every sound of a program, each once. */
export function soundsOf(program: Program): readonly SoundName[] {
  return [...new Set([...program.strokes, ...program.clicks].flatMap(soundsOfStroke))];
}
