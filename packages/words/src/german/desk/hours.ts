/** Unterrichtsstunden, in German. */
import type * as english from '../../english/desk/hours.ts';
import { translation } from '../../message/translated.ts';

/** Words of `hours`. */
export const hours = translation<typeof english.hours>()({
  title: 'Unterrichtsheft',
  write: 'In eine Stunde schreiben',
  writeOn: 'Tag der Stunde',
  of: 'Stunde am {$day}',
  attendance: 'War {$name} da?',
  attendances: {
    planned: 'noch nicht gewesen',
    came: 'war da',
    missed: 'kam nicht',
    cancelled: 'abgesagt',
  },
  done: 'Was gemacht wurde',
  notes: 'Notizen nur für mich; kein Schüler liest sie',
  set: 'Darin aufgegeben',
  setItem: '{$exercise}, bis {$bpm :number}',
  setUntil: '{$exercise}, bis {$bpm :number}, zum {$day}',
  erase: 'Die Stunde am {$day} löschen',
  erased: 'Die Stunde am {$day} ist gelöscht.',
  earlier: '.input {$n :integer} .match $n one {{{$n} frühere Stunde}} * {{{$n} frühere Stunden}}',
  damaged:
    'Die Stunde am {$day} ist auf dem Laufwerk beschädigt und nicht lesbar. Vielleicht steht sie noch in einer Sicherung.',
  upTo: 'Bis (bpm)',
  by: 'Zur Stunde am',
});

/** Words of `nextLesson`. */
export const nextLesson = translation<typeof english.nextLesson>()({
  title: 'Entwurf für die nächste Stunde',
  lead: 'Entworfen aus dem, was gehört und was bestanden wurde. Anhaken, was bleibt, und Tempi ändern; aufgegeben ist erst, was hier aufgegeben wird.',
  nothing: 'Noch gibt es nichts für einen Entwurf: hier liegt keine Lektion.',
  silent: 'Für {$name} wird nichts vorgeschlagen, und aufgegeben ist nichts.',
  allHolds: 'Alles, was auf dem Pult liegt, sitzt bei {$name}: ein Entwurf hätte nichts.',
  on: 'Die nächste Stunde ist am',
  take: '{$exercise} aufgeben',
  upTo: 'Bis, für {$exercise} (bpm)',
  note: 'Hinweis zum Üben, für {$exercise}',
  set: '.input {$n :integer} .match $n 0 {{{$name} nichts aufgeben}} one {{{$name} diese {$n} Übung aufgeben}} * {{{$name} diese {$n} Übungen aufgeben}}',
  isSet: 'Für {$name} aufgegeben und in die heutige Stunde eingetragen.',
});

/** Words of `progressPage`. */
export const progressPage = translation<typeof english.progressPage>()({
  title: 'Fortschrittsblatt',
  lead: 'Für Eltern und Schüler, zum Drucken: Tage und Minuten des Übens, was bestanden ist, was aufgegeben ist und was als Nächstes kommt. Die Notizen stehen nicht darauf.',
  weeks: 'Wie weit es zurückblickt',
  span: '.input {$n :integer} .match $n one {{{$n} Woche}} * {{{$n} Wochen}}',
  print: 'Fortschrittsblatt von {$name}',
});
