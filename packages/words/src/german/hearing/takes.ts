/** Takes, in German. */
import type * as english from '../../english/hearing/takes.ts';
import { translation } from '../../message/translated.ts';

/** Words of `takes`. */
export const takes = translation<typeof english.takes>()({
  title: 'Aufnahmen',
  lead: 'Aufnahmen bleiben auf diesem Gerät, bis du sie löschst oder verschickst.',
  keepAll: 'Jede Aufnahme behalten',
  keep: 'Diese Aufnahme behalten',
  letGo: 'Verwerfen',
  kept: 'Die Aufnahme ist gespeichert.',
  full: 'Auf diesem Gerät ist kein Platz mehr. Lösch erst einige Aufnahmen.',
  empty: 'Noch keine Aufnahmen.',
  timeAlone: 'Nur Groove',
  exercise: 'Übung {$n :exercise}',
  about: '{$when}, {$bpm :number} bpm, {$seconds :number} s',
  rounds:
    '.input {$all :integer} .match $all one {{{$clean :integer} von {$all} Runde sauber}} * {{{$clean :integer} von {$all} Runden sauber}}',
  unheard: 'nicht beurteilt',
  report: 'Der ganze Bericht',
  reportOf: 'Bericht über {$title}',
  listen: 'Anhören',
  preparing: 'Wird vorbereitet …',
  play: 'Abspielen',
  stop: 'Anhalten',
  side: 'Was du hörst',
  sides: {
    take: 'Dich',
    model: 'Das Vorbild',
    both: 'Beides',
  },
  other: 'Die Lektion hat sich geändert; für diese Aufnahme gibt es kein Vorbild mehr.',
  export: 'Für deine Lehrkraft sichern',
  remove: 'Löschen',
  removed: 'Die Aufnahme wurde gelöscht.',
  undo: 'Zurückholen',
  space: 'Aufnahmen brauchen {$used}.',
  spaceLeft: 'Aufnahmen brauchen {$used}; {$left} sind frei.',
  slow: 'Eine Runde in Zeitlupe',
  playSlow: 'Langsam abspielen',
  whichRound: 'Welche Runde',
  roundAt: 'Runde {$n :integer}, {$bpm :number} bpm',
  speed: 'Wie schnell',
  percent: '{$n :integer} %',
  broken: 'Diese Aufnahme ließ sich nicht abspielen.',
});
