/** One lesson, its heading and what happens to it, in German. */
import type * as english from '../../english/desk/lesson.ts';
import { translation } from '../../message/translated.ts';

/** Words of `lesson`. */
export const lesson = translation<typeof english.lesson>()({
  backToDesk: 'Alle Lektionen',
  opening: 'Die Lektion wird geöffnet …',
  missing: 'Diese Lektion ist nicht da. Vielleicht wurde sie gelöscht.',
  undo: 'Rückgängig',
  redo: 'Wiederholen',
  kept: 'Gespeichert',
  keeping: 'Wird gespeichert …',
  unreachable: 'Noch nicht gespeichert: Der Server antwortet nicht. Neuer Versuch …',
  refused: 'Der Server hat diese Änderung abgelehnt.',
  conflict: 'In einem anderen Fenster geändert',
  freshened: 'In einem anderen Fenster geändert; dies ist der neue Text.',
  views: {
    page: 'Blatt',
    groove: 'Groove',
    compose: 'Komponieren',
    text: 'Text',
    print: 'Drucken',
    room: 'Unterricht',
  },
  viewsLabel: 'Ansichten der Lektion',
  brokenText: 'Der Text hat Probleme; zu sehen ist die Lektion, wie sie zuletzt lesbar war.',
  mend: 'Text in Ordnung bringen',
  nothingReadable: 'Der Text lässt sich noch nicht als Lektion lesen.',
});

/** Words of `conflict`. */
export const conflict = translation<typeof english.conflict>()({
  title: 'Zwei Fassungen dieser Lektion',
  lead: 'Sie wurde in einem anderen Fenster geändert, während dieses eigene Änderungen hatte. Nichts ist verloren: Wähle, welche weitergeht.',
  mine: 'Dieses Fenster',
  theirs: 'Das andere Fenster',
  keepMine: 'Mit dieser weitermachen',
  keepTheirs: 'Mit der anderen weitermachen',
  keepBoth: 'Beide als zwei Lektionen behalten',
  changedLine: 'anders',
  leftOut: '.input {$n :integer} .match $n one {{{$n} gleiche Zeile}} * {{{$n} gleiche Zeilen}}',
});

/** Words of `heading`. */
export const heading = translation<typeof english.heading>()({
  title: 'Titel der Lektion',
  by: 'Geschrieben von',
  meter: 'Taktart',
  feel: 'Feel',
  tempo: 'Tempo',
  start: 'Anfang',
  goal: 'Ziel',
  step: 'Schritt',
  bpm: '{$bpm :number} bpm',
  tempi: '{$from :number} bis {$to :number}',
  edit: 'Taktart, Feel und Tempo ändern',
  feels: {
    even: 'gerade',
    triplet: 'triolischer Swing (2:1)',
    'by tempo': 'nach Tempo',
    ratio: 'Verhältnis',
  },
  playedWith: 'Gespielt mit',
  beaters: { sticks: 'Stöcken', brushes: 'Besen' },
  ratio: 'Verhältnis lang zu kurz',
  changeTitle: 'Was aus dem Geschriebenen wird',
  change: 'Ändern',
  cancel: 'Lassen, wie es ist',
  onlyFeel: 'Nur das Feel',
  rewrite: 'In Achteln schreiben',
  otherMeter: 'Eine andere Taktart',
  setUp: 'Aufbau',
  'right-handed': 'Rechtshänder',
  'left-handed': 'Linkshänder',
  comping: 'Übungen für: {$voice}',
  close: 'Fertig',
});
