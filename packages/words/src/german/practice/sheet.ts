/** The sheet and what can be taken along, in German. */
import type * as english from '../../english/practice/sheet.ts';
import { translation } from '../../message/translated.ts';

/** Its single texts. */
export const page = translation<typeof english.page>()({
  opening: 'Das Blatt wird geöffnet …',
  broken: 'Diese Übeseite ist nicht vollständig. Bitte deine Lehrkraft noch einmal darum.',
  newer: 'Es gibt eine neuere Fassung dieses Blatts.',
  takeNewer: 'Jetzt verwenden',
});

/** Words of `sheet`. */
export const sheet = translation<typeof english.sheet>()({
  exercises: 'Das Blatt',
  ways: 'Auf dieser Seite',
  exercise: 'Übung {$n :exercise}',
  open: '.input {$name :string} .match $name || {{Übung {$n :exercise} üben}} * {{Übung {$n :exercise} üben: {$name}}}',
  timeOnly: 'Nur Time',
  openTime: 'Den Groove allein üben',
  tempo: '{$bpm :number} bpm',
  tempi: '{$from :number} bis {$to :number} bpm',
  feels: {
    even: 'gerade',
    triplet: 'Triolen-Swing',
    'by tempo': 'Swing nach Tempo',
  },
  swing: 'Swing {$ratio}',
  brushes: 'mit Besen',
  before: 'Zuerst: {$heading}',
  empty: 'Auf diesem Blatt sind keine Übungen; übe den Groove.',
  by: 'Geschrieben von {$name}',
});

/** Words of `downloads`. */
export const downloads = translation<typeof english.downloads>()({
  title: 'Zum Mitnehmen',
  lead: 'Auf Papier, für andere Programme und für den Bus.',
  sheet: 'Das Blatt zum Drucken (PDF)',
  lesson: 'Die Lektionsdatei',
  midi: 'MIDI',
  musicxml: 'MusicXML',
  audio: 'Ton (MP3)',
  film: 'Film',
  all: 'ganzes Blatt',
  each: 'Jede Übung',
});

/** Words of `keeping`. */
export const keeping = translation<typeof english.keeping>()({
  refused:
    'Dieser Browser behält nichts auf diesem Gerät: Was du spielst, ist weg, wenn die Seite geschlossen wird.',
  full: 'Auf diesem Gerät ist kein Platz mehr: Was du jetzt spielst, ist weg, wenn die Seite geschlossen wird.',
  save: 'Sichern, was da ist',
});

/** Words of `student`. */
export const student = translation<typeof english.student>()({
  who: 'Wer spielt',
  title: 'Schüler auf diesem Gerät',
  lead: 'Jeder hat ein eigenes Protokoll, eigene Aufnahmen und Einstellungen. Anderswo sieht sie niemand.',
  own: 'Mein Name',
  add: 'Noch jemand',
  keep: 'Behalten',
  first: 'Wer zuerst da war',
  plays: 'Es spielt {$name}',
  takeOff: '{$name} von diesem Gerät nehmen',
  takeOffLead:
    'Protokoll, Aufnahmen und Einstellungen von {$name} werden endgültig gelöscht. Sichere vorher alles.',
  takeOffNow: 'Jetzt löschen',
});

/** Words of `settings`. */
export const settings = translation<typeof english.settings>()({
  title: 'Diese Seite',
  theme: 'Hell oder dunkel',
  trySound: 'Den Ton dieses Geräts probieren',
  themes: {
    system: 'wie das System',
    light: 'hell',
    dark: 'dunkel',
  },
  language: 'Sprache',
});
