/** Copying, turning and moving, in German. */
import type * as english from '../../english/desk/rearrange.ts';
import { translation } from '../../message/translated.ts';

/** Words of `rearrange`. */
export const rearrange = translation<typeof english.rearrange>()({
  title: 'Kopieren, umkehren, verschieben',
  what: 'Was',
  beat: 'Zählzeit',
  bar: 'Takt',
  exercise: 'Übung',
  exercises: '.input {$n :integer} .match $n one {{{$n} Übung}} * {{{$n} Übungen}}',
  selectSeveral: 'Mehrere auswählen',
  onVoice: 'Gespielt auf',
  acts: {
    copy: 'Kopieren',
    cut: 'Ausschneiden',
    paste: 'Einsetzen',
    backwards: 'Rückwärts',
    earlier: 'Früher',
    later: 'Später',
  },
  copied: {
    beat: 'Die Zählzeit ist kopiert.',
    bar: 'Der Takt ist kopiert.',
  },
  copiedExercises: '.input {$n :integer} .match $n one {{{$n} Übung kopiert.}} * {{{$n} Übungen kopiert.}}',
  cutExercises:
    '.input {$n :integer} .match $n one {{{$n} Übung ausgeschnitten.}} * {{{$n} Übungen ausgeschnitten.}}',
  pasted: '.input {$n :integer} .match $n one {{{$n} Übung eingesetzt.}} * {{{$n} Übungen eingesetzt.}}',
  otherMeter: 'Das Kopierte hat {$found :integer} Schläge im Takt, hier hat ein Takt {$expected :integer}.',
  isSelected: 'ausgewählt',
});
