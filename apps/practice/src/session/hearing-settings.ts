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
}

/** How many clean loops can be chosen. */
export const LOOP_CHOICES = [2, 4, 6, 8, 12] as const;

const KEY = 'hearing';

const FIRST: HearingSettings = {
  level: 'beginner',
  handsFree: false,
  comfortableLoops: 6,
  keepAll: false,
};

/** Settings as they were kept, also with the names that levels had before; the first ones where they cannot be read. */
export function readHearingSettings(text: string): HearingSettings {
  try {
    const kept = { ...FIRST, ...(JSON.parse(text) as Partial<HearingSettings>) };
    const level = readLevel(kept.level);
    return level && kept.comfortableLoops >= 1 ? { ...kept, level } : FIRST;
  } catch {
    return FIRST;
  }
}

function recall(): HearingSettings {
  return readHearingSettings(rememberedOwn(KEY) ?? '{}');
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
