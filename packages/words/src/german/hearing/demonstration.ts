/** How the teacher plays an exercise, in German. */
import type * as english from '../../english/hearing/demonstration.ts';
import { translation } from '../../message/translated.ts';

/** Words of `demonstration`. */
export const demonstration = translation<typeof english.demonstration>()({
  title: 'So spielt es deine Lehrkraft',
  play: 'Deine Lehrkraft anhören',
  stop: 'Deine Lehrkraft anhalten',
  speed: 'Wie schnell',
  percent: '{$n :integer} %',
  tempo: 'etwa {$bpm :integer} bpm',
  preparing: 'Wird eingerichtet …',
  broken: 'Es konnte nicht abgespielt werden.',
  film: 'Als Film ansehen',
});
