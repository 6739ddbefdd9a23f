/** What a student chooses about hearing, kept in the browser. */
import { type Level, readLevel } from '@shedbook/judge';
import { useState } from 'react';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';

/** The choices. */
export interface HearingSettings {
  readonly level: Level;
  readonly handsFree: boolean;
  /** Clean loops before the next exercise. */
  readonly comfortableLoops: number;
  readonly keepAll: boolean;
  /** The level that the teacher set last; null where none has come. */
  readonly setLevel: Level | null;
}

/** How many clean loops can be chosen. */
export const LOOP_CHOICES = [2, 4, 6, 8, 12] as const;

const KEY = 'hearing';

const FIRST: HearingSettings = {
  level: 'beginner',
  handsFree: false,
  comfortableLoops: 6,
  keepAll: false,
  setLevel: null,
};

/** Settings as they were kept, also with the names that levels had before; the first ones where they cannot be read. */
export function readHearingSettings(text: string): HearingSettings {
  try {
    const kept = { ...FIRST, ...(JSON.parse(text) as Partial<HearingSettings>) };
    const level = readLevel(kept.level);
    const setLevel = readLevel(kept.setLevel);
    return level && kept.comfortableLoops >= 1 ? { ...kept, level, setLevel } : FIRST;
  } catch {
    return FIRST;
  }
}

function recall(): HearingSettings {
  return readHearingSettings(rememberedOwn(KEY) ?? '{}');
}

/**
 * Takes the level at which the teacher judges this student: both come to the same verdicts then. What the student
 * chooses afterwards stays until the teacher sets another.
 */
export function takeSetLevel(level: Level): void {
  const settings = recall();
  if (settings.setLevel !== level) rememberOwn(KEY, JSON.stringify({ ...settings, level, setLevel: level }));
}

/** Chooses from elsewhere whether practice goes on by itself after clean rounds. */
export function chooseHandsFree(handsFree: boolean): void {
  rememberOwn(KEY, JSON.stringify({ ...recall(), handsFree }));
}

/** The choices, and how to change them. */
export function useHearingSettings() {
  const [settings, set] = useState(recall);
  const change = (next: Partial<HearingSettings>) => {
    const changed = { ...settings, ...next };
    rememberOwn(KEY, JSON.stringify(changed));
    set(changed);
  };
  return [settings, change] as const;
}
