/** What is wrong with a MusicXML file, in German. */
import type { ExpectedFact } from '@shedbook/core';
import type { InstrumentFact, MidiFact, MusicXmlFact } from '@shedbook/exchange';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for MusicXML files. */
export const musicxml = sentences<Exclude<MusicXmlFact, ExpectedFact | MidiFact>, InstrumentFact>()({
  // Found.
  'xml-character': 'ein Zeichen, das XML hier nicht erlaubt',
  'xml-ampersand': 'ein „&“, das für kein Zeichen steht; eines, das gemeint ist, wird „&amp;“ geschrieben',
  'xml-attribute': 'ein Attribut, das nicht name="Wert" geschrieben ist',
  'xml-attribute-twice': 'zweimal das Attribut {$name} in einem Tag',
  'xml-name': 'ein Zeichen, das in XML kein Name hat, oder ein „<“, mit dem kein Tag beginnt',
  'xml-never-ended': '<{$name}>, das nie endet',
  'xml-never-begun': '</{$name}>, das nichts beendet',
  'xml-end-tag': 'ein End-Tag, das nicht zu <{$name}> aus Zeile {$fromLine :integer useGrouping=never} passt',
  'xml-outside': 'etwas außerhalb des einen Elements, das alle anderen enthält',
  'xml-without-element': 'kein Element',
  'xml-comment': 'ein Kommentar, der nicht <!-- … --> geschrieben ist oder „--“ enthält',
  'xml-declaration':
    'eine erste Zeile, die nicht <?xml version="1.0"?> geschrieben ist, oder eine solche an anderer Stelle',
  'xml-breaks-off': 'das Ende der Datei in einem Tag oder Kommentar',
  'xml-out-of-place': 'ein Zeichen, das hier nicht stehen kann',
  'xml-too-deep': 'mehr als {$most :integer} Elemente ineinander',
  'xml-too-many': 'mehr als {$most :integer} Elemente',
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
