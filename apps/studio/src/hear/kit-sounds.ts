/** Which sounds of the kit a program needs. */
import type { SoundName } from '@shedbook/sound';
import type { Program, ProgramStroke } from './program.ts';

const BY_ARTICULATION: Readonly<Partial<Record<string, SoundName>>> = {
  'ride bell': 'ride-bell',
  'hihat-foot splash': 'hihat-splash',
  'snare buzz': 'snare-buzz',
};

/** The sound that a stroke is made with. */
export function soundFor({
  voice,
  articulation,
  mark,
}: Pick<ProgramStroke, 'voice' | 'articulation' | 'mark'>): SoundName {
  if (voice === 'click') return mark === 'X' ? 'click-accent' : 'click-beat';
  return BY_ARTICULATION[`${voice} ${articulation}`] ?? voice;
}

/** Every sound of a program, each once. */
export function soundsOf(program: Program): readonly SoundName[] {
  return [...new Set([...program.strokes, ...program.clicks].map(soundFor))];
}
