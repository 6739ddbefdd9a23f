/** The desk with its lessons, in German. */
import type * as english from '../../english/desk/desk.ts';
import { translation } from '../../message/translated.ts';

/** Words of `desk`. */
export const desk = translation<typeof english.desk>()({
  title: 'Lektionen',
  lead: 'Ein Blatt schreiben, in jedem Tempo hören, für Dienstag drucken.',
  newLesson: 'Neue Lektion',
  newTitle: 'Lektion ohne Titel',
  importFile: 'Importieren',
  importHint: 'Lektionsdatei, MusicXML oder MIDI',
  untitled: 'Lektion ohne Titel',
  exercises: '.input {$n :integer} .match $n one {{{$n} Übung}} * {{{$n} Übungen}}',
  problems: '.input {$n :integer} .match $n one {{{$n} Problem im Text}} * {{{$n} Probleme im Text}}',
  changed: 'geändert {$when}',
  open: '{$title} öffnen',
  more: 'Mehr zu {$title}',
  rename: 'Umbenennen',
  duplicate: 'Verdoppeln',
  exportLesson: 'Lektionsdatei exportieren',
  exportMusicXml: 'MusicXML exportieren',
  exportMidi: 'MIDI exportieren',
  remove: 'Löschen',
  removed: '{$title} wurde gelöscht.',
  restored: '{$title} ist wieder da.',
  undo: 'Rückgängig',
  copyOf: '{$title}, Kopie',
  imported: '{$title} liegt auf dem Tisch.',
  importFailed: '{$file} konnte nicht gelesen werden.',
  empty: 'Noch liegt nichts auf dem Tisch. Beginne eine Lektion oder importiere eine.',
  renameTitle: 'Lektion umbenennen',
  name: 'Titel',
});

/** Words of `guide`. */
export const guide = translation<typeof english.guide>()({
  title: 'Von hier zum gedruckten Blatt',
  steps: ['Eine Lektion öffnen', 'Einen Takt schreiben', 'Ihn hören', 'Ihn drucken'],
  done: 'Weglegen',
});
