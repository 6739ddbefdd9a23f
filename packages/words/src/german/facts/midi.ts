/** What is wrong with a Standard MIDI File, in German. */
import type { ExpectedFact } from '@shedbook/core';
import type { MidiFact, MidiPartFact } from '@shedbook/exchange';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for Standard MIDI Files. */
export const midi = sentences<Exclude<MidiFact, ExpectedFact>, MidiPartFact>()({
  // Parts of the file: each as it stands after "für".
  'midi-chunk-type': 'die Art eines Blocks',
  'midi-header-length': 'die Länge des Kopfes',
  'midi-header-chunk': 'den Kopf der Datei',
  'midi-format': 'das Format',
  'midi-track-count': 'die Zahl der Spuren',
  'midi-division': 'die Teilung',
  'midi-header': 'den Kopf',
  'midi-chunk-length': 'die Länge eines Blocks',
  'midi-chunk': 'einen Block',
  'midi-chunk-of': 'den Block {$type}',
  'midi-meta-type': 'die Art eines Meta-Ereignisses',
  'midi-meta-length': 'die Länge eines Meta-Ereignisses',
  'midi-meta-data': 'die Daten eines Meta-Ereignisses',
  'midi-event-data': 'die Daten eines Ereignisses',
  'midi-delta-time': 'die Zeit bis zum nächsten Ereignis',
  'midi-event': 'ein Ereignis',
  'midi-status': 'ein Statusbyte',
  'midi-exclusive-length': 'die Länge einer System-Exclusive-Nachricht',
  'midi-exclusive-data': 'die Daten einer System-Exclusive-Nachricht',
  // Found.
  'midi-data-end': 'das Ende der Daten',
  'midi-bytes':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} Byte}} * {{{$bytes} Bytes}}',
  'midi-bytes-left':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} Byte vor dem Ende der Daten}} * {{{$bytes} Bytes vor dem Ende der Daten}}',
  'midi-bytes-of':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} Byte für {$part :say}}} * {{{$bytes} Bytes für {$part :say}}}',
  'midi-bytes-after-end':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} Byte nach dem Ende der Spur}} * {{{$bytes} Bytes nach dem Ende der Spur}}',
  'midi-header-found': 'ein Kopf von {$bytes :integer useGrouping=never} Bytes',
  'midi-short-tempo': 'ein Tempo-Ereignis von {$bytes :integer} Bytes',
  'midi-short-time-signature': 'ein Taktart-Ereignis von {$bytes :integer} Bytes',
  'midi-long-quantity': 'eine Größe variabler Länge von mehr als vier Bytes',
  'midi-empty-file': 'eine leere Datei',
  'midi-format-found': 'Format {$format :integer useGrouping=never}',
  'midi-time-code':
    'Timecode von {$frames :integer} Bildern in der Sekunde und {$ticks :integer} Ticks je Bild',
  'midi-bytes-up-to': 'eine Datei von höchstens {$bytes :integer} Byte',
  'midi-no-ticks': '0 Ticks je Viertel',
  'midi-end-after-tracks':
    'das Ende der Datei nach {$read :integer useGrouping=never} von {$tracks :integer useGrouping=never} Spuren',
  'midi-no-status': '{$byte}, wo ein Ereignis beginnt',
  'midi-byte-in-event': '{$byte} in einem Ereignis',
  'midi-status-found': 'der Status {$byte}',
  'midi-no-drum-notes': 'keine Noten für das Schlagzeug',
  'midi-zero-tempo': 'ein Tempo von 0 µs je Viertel',
  'midi-time-signature-found': 'die Taktart {$upper :integer}/2^{$power :integer}',
  'midi-meter-found': 'die Taktart {$upper :integer}/{$lower :integer}',
  'midi-track-end': 'das Ende der Spur',
  'midi-notes-of-channel':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} Note von Kanal {$channel :integer}}} * {{{$notes} Noten von Kanal {$channel :integer}}}',
  'midi-notes-of-key':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} Note der Taste {$key :integer}}} * {{{$notes} Noten der Taste {$key :integer}}}',
  'midi-notes-on-no-slot':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} Note auf keiner Stelle eines Schlags}} * {{{$notes} Noten auf keiner Stelle eines Schlags}}',
  'change-of-meter': 'ein Wechsel zu {$meter}',
  // Expected.
  'midi-short-quantity': 'höchstens vier Bytes für {$part :say}',
  'midi-header-wanted': 'ein Kopf von 6 Bytes oder mehr',
  'midi-formats': 'Format 0 oder 1',
  'midi-ticks': 'Ticks je Viertel',
  'midi-status-wanted': 'ein Statusbyte ab 0x80',
  'midi-data-wanted': 'ein Datenbyte von 0x00 bis 0x7F',
  'midi-event-wanted': 'ein Kanal-, System-Exclusive- oder Meta-Ereignis',
  'midi-time-signature-wanted': 'eine wie 4/2^2',
  'midi-end-event': 'ein Ereignis davor, das die Spur beendet',
  'midi-next-track': 'die nächste Spur',
  'midi-meters': 'eine Taktart bis 32/32',
  'midi-drum-key': 'eine Taste des Schlagzeugs auf Kanal 10',
  'midi-notes-on-slots':
    'Noten auf 1, 2, 3, 4 oder 6 Stellen je Schlag, in höchstens {$bars :integer useGrouping=never} Takten',
  'meter-throughout': 'durchgehend {$meter}',
  // Repairs.
  'midi-damaged': 'die Datei ist beschädigt: neu kopieren oder ausgeben',
  'midi-cut-or-damaged': 'die Datei ist abgeschnitten oder beschädigt: neu kopieren oder ausgeben',
  'midi-cut': 'die Datei ist abgeschnitten: neu kopieren oder ausgeben',
  'midi-choose-file': 'die MIDI-Datei selbst wählen',
  'midi-other-file': 'das ist keine Standard-MIDI-Datei',
  'midi-export-again': 'neu ausgeben',
  'midi-export-format': 'als Datei vom Typ 0 oder 1 ausgeben',
  'midi-export-musical-time': 'in musikalischer Zeit (Schlägen) ausgeben',
  'midi-map-key': 'diese Noten fehlen; die Taste einer Stimme zuordnen, um sie zu behalten',
  'midi-other-notes': 'Noten, die seither geändert wurden',
  'midi-notes-of-lesson': 'die Noten der Lektion darin',
  'midi-notes-hold': 'die Noten gelten; Abschnitte, Schichten, Formen und Ziele jener Lektion fehlen',
  'midi-left-out': 'sie fehlen',
  'midi-read-as': 'als {$meter} gelesen',
});
