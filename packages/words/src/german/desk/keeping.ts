/** Wie lange Aufnahmen bleiben, das Protokoll und der Übungsplan, in German. */
import type * as english from '../../english/desk/keeping.ts';
import { translation } from '../../message/translated.ts';
import { entries } from '../journal.ts';

/** Words of `keeping`. */
export const keeping = translation<typeof english.keeping>()({
  label: 'Wie lange Aufnahmen bleiben',
  always: 'bis jemand sie löscht',
  weeks: '.input {$n :integer} .match $n one {{{$n} Woche}} * {{{$n} Wochen}}',
  lead: 'Ältere werden gelöscht und auf dem Laufwerk überschrieben, außer denen, die von Hand behalten werden. Schüler sehen, wie lange ihre bleiben.',
  due: '.input {$n :integer} .match $n one {{{$n} Aufnahme ist älter und geht innerhalb einer Stunde.}} * {{{$n} Aufnahmen sind älter und gehen innerhalb einer Stunde.}}',
  saved: 'Festgelegt. Schüler sehen es beim nächsten Besuch.',
  keepThis: 'Diese Aufnahme behalten',
  goes: 'sonst wird sie am {$day} gelöscht',
});

/** Words of `journal`. */
export const journal = translation<typeof english.journal>()({
  title: 'Protokoll',
  lead: 'Wer was wann getan hat, ein Jahr lang. Nichts von dem, was gesagt, gespielt oder geschrieben wurde, steht darin.',
  more: 'Mehr zeigen',
  entries,
});

/** Words of `coachSwitch`. */
export const coachSwitch = translation<typeof english.coachSwitch>()({
  title: 'Vorschläge',
  label: 'Was {$name} vorgeschlagen wird',
  states: { on: 'was als Nächstes kommt', paused: 'Pause', off: 'nichts' },
  until: 'Wieder ab',
  speaks: 'Was {$name} aufgegeben ist, kommt zuerst; der Rest der Minuten wird gefüllt, mit dem Grund dabei.',
  silent: '{$name} hat, was aufgegeben ist, und sonst nichts; auch hier wird nichts vorgeschlagen.',
});
