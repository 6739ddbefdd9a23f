/**
 * Units: numbers that say what they count, and the ways from one unit to another.
 *
 * Conventions: a unit is a number with a brand that exists for the compiler only. It goes wherever a number goes; a bare
 * number, or one of another unit, does not go where a unit is asked for, and sums and products are bare numbers again.
 * The constructor of a unit bears its name and believes what it is given: `Seconds(1.5)`. Score time is no number but a
 * `Fraction` of a whole note.
 * Sources: SI for seconds and hertz; MIDI 1.0 (Standard MIDI Files) for ticks; ITU-R BS.1770-4 for LUFS; AES17 for
 * decibels of full scale.
 */

const unit = Symbol('unit');

/** A number of one unit. */
export type Unit<Name extends string> = number & { readonly [unit]: Name };

/** Performed time. */
export type Seconds = Unit<'seconds'>;
/** Performed time where people read it, and lateness: positive is late. */
export type Milliseconds = Unit<'milliseconds'>;
/** A tempo in quarter notes a minute, whatever the meter. */
export type Bpm = Unit<'quarter notes a minute'>;
/** A length in quarter notes, or in parts of one. */
export type Quarters = Unit<'quarter notes'>;
/** A length in beats of the meter, or in parts of one. */
export type Beats = Unit<'beats'>;
/** Time in a MIDI file, a whole number; how many make a quarter note the file says. */
export type Ticks = Unit<'ticks'>;
/** A place or a length in audio, a whole number; how many make a second their rate says. */
export type Samples = Unit<'samples'>;
/** Happenings a second: a frequency, or a sample rate. */
export type Hertz = Unit<'hertz'>;
/** A level relative to the lead voice: K-weighted decibels, of which a plain stroke of the lead voice has 0. */
export type LeadDb = Unit<'decibels relative to the lead voice'>;
/**
 * A level as a take has it: of a recording K-weighted decibels of full scale over a stroke's first 100 ms, of notes
 * decibels of velocity 90. Where the microphone stands and how far it is turned up is in it: only the distance from
 * another level of the same take says anything.
 */
export type TakeDb = Unit<'decibels in a take'>;
/** An absolute level: decibels of the amplitude of full scale, of which a full-scale peak has 0. */
export type FullScaleDb = Unit<'decibels of full scale'>;
/** An absolute loudness: K-weighted, of full scale. */
export type Lufs = Unit<'LUFS'>;

/** Says that a number counts seconds. */
export const Seconds = (value: number): Seconds => value as Seconds;
/** Says that a number counts milliseconds. */
export const Milliseconds = (value: number): Milliseconds => value as Milliseconds;
/** Says that a number is a tempo in quarter notes a minute. */
export const Bpm = (value: number): Bpm => value as Bpm;
/** Says that a number counts quarter notes. */
export const Quarters = (value: number): Quarters => value as Quarters;
/** Says that a number counts beats of the meter. */
export const Beats = (value: number): Beats => value as Beats;
/** Says that a number counts ticks. */
export const Ticks = (value: number): Ticks => value as Ticks;
/** Says that a number counts samples. */
export const Samples = (value: number): Samples => value as Samples;
/** Says that a number is a frequency or a rate. */
export const Hertz = (value: number): Hertz => value as Hertz;
/** Says that a number is a level relative to the lead voice. */
export const LeadDb = (value: number): LeadDb => value as LeadDb;
/** Says that a number is a level as a take has it. */
export const TakeDb = (value: number): TakeDb => value as TakeDb;
/** Says that a number is a level of full scale. */
export const FullScaleDb = (value: number): FullScaleDb => value as FullScaleDb;
/** Says that a number is a loudness. */
export const Lufs = (value: number): Lufs => value as Lufs;

/** @example secondsToMilliseconds(Seconds(0.25)) // 250 */
export function secondsToMilliseconds(seconds: Seconds): Milliseconds {
  return Milliseconds(seconds * 1000);
}

/** @example millisecondsToSeconds(Milliseconds(250)) // 0.25 */
export function millisecondsToSeconds(milliseconds: Milliseconds): Seconds {
  return Seconds(milliseconds / 1000);
}

/** The nearest sample to a moment. @example secondsToSamples(Seconds(0.5), Hertz(44100)) // 22050 */
export function secondsToSamples(seconds: Seconds, rate: Hertz): Samples {
  return Samples(Math.round(seconds * rate));
}

/** @example samplesToSeconds(Samples(22050), Hertz(44100)) // 0.5 */
export function samplesToSeconds(samples: Samples, rate: Hertz): Seconds {
  return Seconds(samples / rate);
}
