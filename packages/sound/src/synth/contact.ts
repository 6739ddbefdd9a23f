/**
 * How long a stick or beater touches what it strikes, and what that does to the spectrum.
 *
 * Conventions: seconds, hertz; drive in dB relative to a plain stroke.
 * Source: Hertz's law of impact: contact time falls as velocity^(−1/5), with a larger exponent for felt and
 * for a head that gives (A. Wagner, Analysis of drumbeats, KTH 2006: 3–6 ms between stick and head).
 */

/** A contact: its length for a plain stroke and how it shortens with the force. */
export interface Contact {
  readonly plainSeconds: number;
  /** Contact time is proportional to velocity to the power of minus this. */
  readonly exponent: number;
}

/** Length of a contact at a drive, in seconds. */
export function contactSeconds(contact: Contact, driveDb: number): number {
  return contact.plainSeconds * 10 ** ((-contact.exponent * driveDb) / 20);
}

/**
 * How much of a frequency a contact passes, 0…1: the smooth envelope of the spectrum of a raised-cosine pulse,
 * flat up to 1 / (2·length) and falling by 12 dB an octave above it.
 */
export function contactGain(seconds: number, frequencyHz: number): number {
  return 1 / (1 + (1.5 * frequencyHz * seconds) ** 2);
}
