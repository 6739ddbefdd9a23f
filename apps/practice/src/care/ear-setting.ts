/** The level that a student measured or set, and whose ears they are; kept in the browser. */
import type { EarSetting } from '@shedbook/coach';
import { useState } from 'react';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';

/** Levels that can be set, in dBA at the ear. */
export const LEVEL_RANGE = { least: 70, most: 115 } as const;

const KEY = 'ears';

const FIRST: EarSetting = { levelDba: 94, listener: 'adult' };

function recall(): EarSetting {
  try {
    const kept = { ...FIRST, ...(JSON.parse(rememberedOwn(KEY) ?? '{}') as Partial<EarSetting>) };
    const isKnown = kept.levelDba >= LEVEL_RANGE.least && kept.levelDba <= LEVEL_RANGE.most;
    return isKnown && ['adult', 'child'].includes(kept.listener) ? kept : FIRST;
  } catch {
    return FIRST;
  }
}

/** The setting, and how to change it. */
export function useEarSetting() {
  const [setting, set] = useState(recall);
  const change = (next: Partial<EarSetting>) => {
    const changed = { ...setting, ...next };
    rememberOwn(KEY, JSON.stringify(changed));
    set(changed);
  };
  return [setting, change] as const;
}
