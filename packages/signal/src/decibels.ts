/**
 * Decibels of amplitudes and of powers.
 *
 * Conventions: 0 dB is a factor of 1; a factor of 0 is −Infinity dB.
 * Source: IEC 60027-3: 20·log10 of a ratio of amplitudes, 10·log10 of a ratio of powers.
 */

/** Amplitude factor of a level in dB. */
export function dbToGain(levelDb: number): number {
  return 10 ** (levelDb / 20);
}

/** Level in dB of an amplitude factor. */
export function gainToDb(gain: number): number {
  return 20 * Math.log10(gain);
}

/** Power factor of a level in dB. */
export function dbToPower(levelDb: number): number {
  return 10 ** (levelDb / 10);
}

/** Level in dB of a power factor. */
export function powerToDb(power: number): number {
  return 10 * Math.log10(power);
}
