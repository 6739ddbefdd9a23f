/**
 * How long a sound level may last, by published recommendations. Information, not medical advice: local rules and
 * a licensed practitioner come first.
 *
 * Conventions: levels in dBA as measured at the ear, durations in seconds, doses as shares (1 is all of it).
 * Sources: NIOSH 98-126 (1998), recommended exposure limit 85 dBA for 8 hours, 3 dB exchange rate: hours =
 * 8 / 2^((L − 85)/3). WHO-ITU H.870 (2019): 80 dBA for 40 hours a week, for children and sensitive listeners
 * 75 dBA for 40 hours, same exchange.
 */

const SECONDS_AN_HOUR = 3600;
const EXCHANGE_DB = 3;

const DAILY = { levelDba: 85, hours: 8 };
const WEEKLY_HOURS = 40;

/** Whose ears: children and sensitive listeners have the smaller weekly allowance. */
export type Listener = 'adult' | 'child';

const WEEKLY_DBA: Readonly<Record<Listener, number>> = { adult: 80, child: 75 };

/** Some time at a level. */
export interface Exposure {
  readonly levelDba: number;
  readonly durationSeconds: number;
}

function allowedSeconds(levelDba: number, referenceDba: number, hours: number): number {
  return (hours * SECONDS_AN_HOUR) / 2 ** ((levelDba - referenceDba) / EXCHANGE_DB);
}

/**
 * Longest time in a day at a level, in seconds.
 * @source NIOSH 98-126
 * @example dailyAllowanceSeconds(100) // 900
 */
export function dailyAllowanceSeconds(levelDba: number): number {
  return allowedSeconds(levelDba, DAILY.levelDba, DAILY.hours);
}

/**
 * Longest time in a week at a level, in seconds.
 * @source WHO-ITU H.870
 */
export function weeklyAllowanceSeconds(levelDba: number, listener: Listener): number {
  return allowedSeconds(levelDba, WEEKLY_DBA[listener], WEEKLY_HOURS);
}

function sum(exposures: readonly Exposure[], allowance: (levelDba: number) => number): number {
  return exposures.reduce((dose, each) => dose + each.durationSeconds / allowance(each.levelDba), 0);
}

/**
 * Share of a day's allowance that some exposures use.
 * @source NIOSH 98-126: D = Σ C/T
 */
export function dailyDose(exposures: readonly Exposure[]): number {
  return sum(exposures, dailyAllowanceSeconds);
}

/** Share of a week's allowance that some exposures use. */
export function weeklyDose(exposures: readonly Exposure[], listener: Listener): number {
  return sum(exposures, (levelDba) => weeklyAllowanceSeconds(levelDba, listener));
}
