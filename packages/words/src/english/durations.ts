/** Durations, in English. */

/** Durations, to two units. */
export const durations = {
  seconds: '{$seconds :integer} s',
  minutes: '{$minutes :integer} min',
  minutesAndSeconds: '{$minutes :integer} min {$seconds :integer} s',
  hours: '{$hours :integer} h',
  hoursAndMinutes: '{$hours :integer} h {$minutes :integer} min',
} as const;
