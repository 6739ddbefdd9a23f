/** What a student chooses about hearing, kept in the browser. */
import { STUDENT_LEVELS, type StudentLevel } from '@shedbook/judge';
import { remember, remembered } from '@shedbook/stand';
import { useState } from 'react';

/** The choices. */
export interface HearingSettings {
  readonly level: StudentLevel;
  readonly handsFree: boolean;
  /** Clean loops before the next exercise. */
  readonly comfortableLoops: number;
  readonly keepAll: boolean;
}

/** How many clean loops can be chosen. */
export const LOOP_CHOICES = [2, 4, 6, 8, 12] as const;

const KEY = 'hearing';

const FIRST: HearingSettings = {
  level: 'first steps',
  handsFree: false,
  comfortableLoops: 6,
  keepAll: false,
};

function recall(): HearingSettings {
  try {
    const kept = { ...FIRST, ...(JSON.parse(remembered(KEY) ?? '{}') as Partial<HearingSettings>) };
    const isKnown = STUDENT_LEVELS.includes(kept.level) && kept.comfortableLoops >= 1;
    return isKnown ? kept : FIRST;
  } catch {
    return FIRST;
  }
}

/** Chooses from elsewhere that practice goes on by itself. */
export function chooseHandsFree(): void {
  remember(KEY, JSON.stringify({ ...recall(), handsFree: true }));
}

/** The choices, and how to change them. */
export function useHearingSettings() {
  const [settings, set] = useState(recall);
  const change = (next: Partial<HearingSettings>) => {
    const changed = { ...settings, ...next };
    remember(KEY, JSON.stringify(changed));
    set(changed);
  };
  return [settings, change] as const;
}
