/** How loud a microphone is, in words. */

/** Peaks in dB re full scale between nothing, soft, good and too loud. */
const LEVELS = { soft: -60, good: -36, loud: -1 } as const;

/** What a peak, in dB re full scale, is called. */
export function levelName(levelDb: number): 'silent' | 'soft' | 'good' | 'loud' {
  if (levelDb < LEVELS.soft) return 'silent';
  if (levelDb < LEVELS.good) return 'soft';
  return levelDb < LEVELS.loud ? 'good' : 'loud';
}
