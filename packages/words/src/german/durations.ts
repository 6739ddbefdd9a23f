/** Durations, in German. */
import type * as english from '../english/durations.ts';
import { translation } from '../message/translated.ts';

/** Durations, to two units. */
export const durations = translation<typeof english.durations>()({
  seconds: '{$seconds :integer} Sek.',
  minutes: '{$minutes :integer} Min.',
  minutesAndSeconds: '{$minutes :integer} Min. {$seconds :integer} Sek.',
  hours: '{$hours :integer} Std.',
  hoursAndMinutes: '{$hours :integer} Std. {$minutes :integer} Min.',
});
