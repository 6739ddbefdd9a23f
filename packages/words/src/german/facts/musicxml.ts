/** What is wrong with a MusicXML file, in German. */
import type { ExpectedFact } from '@shedbook/core';
import type { InstrumentFact, MidiFact, MusicXmlFact } from '@shedbook/exchange';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for MusicXML files. */
export const musicxml = sentences<Exclude<MusicXmlFact, ExpectedFact | MidiFact>, InstrumentFact>()({
  // Found.
  'xml-parser': '{$message}',
  'definite-pitch': 'mit bestimmter Tonhöhe',
  'unknown-instrument': 'eines unbekannten Instruments',
  instrument: 'von {$name}',
  'instrument-of-key': 'von {$name} (Taste {$key :integer})',
  'musicxml-notes-of':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} Note {$of :say}}} * {{{$notes} Noten {$of :say}}}',
  'musicxml-graces-alone':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} Vorschlag ({$voice :voice}) ohne seinen Schlag}} * {{{$notes} Vorschläge ({$voice :voice}) ohne ihren Schlag}}',
  'musicxml-no-sum': 'Dauern ohne genaue Summe',
  'musicxml-no-beats': 'eine Taktangabe ohne Schläge',
  'musicxml-beats': 'eine Taktangabe von {$beats} Schlägen',
  'musicxml-duration': 'die Dauer „{$text}“',
  'musicxml-without-duration': '{$element} ohne Dauer',
  'musicxml-no-divisions': 'keine Teilung (divisions)',
  'musicxml-backup-over': 'ein backup über den Taktstrich',
  'musicxml-after-bar': 'ein Schlag nach dem Ende eines {$meter}-Takts',
  'musicxml-misfit': 'ein Schlag ({$voice :voice}) bei {$place} einer ganzen Note',
  'musicxml-root': 'das Wurzelelement {$element}',
  'musicxml-zip-without': 'ein Zip-Archiv ohne {$file}',
  'musicxml-no-root-file': '{$file}, das keine Hauptdatei nennt',
  'musicxml-no-file': 'keine Datei {$file} von lesbarer Größe darin',
  'musicxml-damaged-zip': 'ein beschädigtes Zip-Archiv',
  // Expected.
  'xml-well-formed': 'wohlgeformtes XML',
  'musicxml-4': 'MusicXML 4.0',
  'musicxml-drum-voice': 'eine Stimme des Schlagzeugs',
  'musicxml-stroke-after': 'ein Schlag danach ({$voice :voice})',
  'musicxml-fitting-divisions': 'Teilungen, die zueinander passen',
  'musicxml-one-meter': 'eine Taktart wie 4/4 oder 6/8',
  'musicxml-a-number-of-divisions': 'eine Zahl von divisions',
  'musicxml-divisions-first': 'divisions in den attributes des ersten Takts',
  'musicxml-backup-inside': 'ein backup innerhalb des Takts',
  'musicxml-strokes-inside': 'Schläge innerhalb des Takts',
  'musicxml-one-stroke': 'ein Schlag je Stimme auf 1 bis 8 Stellen je Schlag',
  'musicxml-partwise': 'score-partwise',
  'musicxml-compressed': 'eine komprimierte MusicXML-Datei',
  // Repairs.
  'musicxml-graces-left-out': 'Vorschläge allein fehlen',
  'musicxml-notes-left-out': 'diese Noten fehlen',
  'musicxml-measure-left-out': 'der Rest dieses Takts fehlt',
  'musicxml-bars-left-out': 'dieser Takt und alle danach fehlen',
  'musicxml-other-notes': 'Noten, die seither geändert wurden',
  'musicxml-notes-of-lesson': 'die Noten der Lektion darin',
  'musicxml-notes-hold': 'die Noten gelten; Abschnitte, Schichten, Formen und Ziele jener Lektion fehlen',
  'musicxml-it-left-out': 'er fehlt',
  'musicxml-to-bar-line': 'als backup zum Taktstrich gelesen',
  'musicxml-save-partwise': 'Stimme für Stimme sichern (partwise)',
  'musicxml-other-file': 'das ist keine MusicXML-Partitur',
  'musicxml-save-again': 'die Partitur neu sichern, oder unkomprimiert',
});
