/** Durations in words. */
import type { HearingWords } from '../screens/hearing.ts';

/** A duration to two units: `25 h 24 min`, `47 min 37 s`, `28 s`; rounded to the smaller of the two. */
export function durationWords(words: HearingWords['durations'], durationSeconds: number): string {
  const whole = Math.round(durationSeconds);
  if (whole < 60) return words.seconds({ seconds: whole });
  if (whole < 3600) {
    const values = { minutes: Math.floor(whole / 60), seconds: whole % 60 };
    return values.seconds === 0 ? words.minutes(values) : words.minutesAndSeconds(values);
  }
  const all = Math.round(durationSeconds / 60);
  const values = { hours: Math.floor(all / 60), minutes: all % 60 };
  return values.minutes === 0 ? words.hours(values) : words.hoursAndMinutes(values);
}
