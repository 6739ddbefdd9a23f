/** What is wrong with a Standard MIDI File, in English. */
import type { ExpectedFact } from '@shedbook/core';
import type { MidiFact, MidiPartFact } from '@shedbook/exchange';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for Standard MIDI Files. */
export const midi = sentences<Exclude<MidiFact, ExpectedFact>, MidiPartFact>()({
  // Parts of the file.
  'midi-chunk-type': 'a chunk type',
  'midi-header-length': 'header length',
  'midi-header-chunk': 'a header chunk',
  'midi-format': 'format',
  'midi-track-count': 'number of tracks',
  'midi-division': 'division',
  'midi-header': 'header',
  'midi-chunk-length': 'chunk length',
  'midi-chunk': 'chunk',
  'midi-chunk-of': '{$type} chunk',
  'midi-meta-type': 'meta event type',
  'midi-meta-length': 'meta event length',
  'midi-meta-data': 'meta event data',
  'midi-event-data': 'event data',
  'midi-delta-time': 'delta time',
  'midi-event': 'an event',
  'midi-status': 'status',
  'midi-exclusive-length': 'system exclusive length',
  'midi-exclusive-data': 'system exclusive data',
  // Found.
  'midi-data-end': 'the end of the data',
  'midi-bytes':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} byte}} * {{{$bytes} bytes}}',
  'midi-bytes-left':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} byte before the end of the data}} * {{{$bytes} bytes before the end of the data}}',
  'midi-bytes-of':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} byte of {$part :say}}} * {{{$bytes} bytes of {$part :say}}}',
  'midi-bytes-after-end':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{{$bytes} byte after the end-of-track event}} * {{{$bytes} bytes after the end-of-track event}}',
  'midi-header-found': 'a header of {$bytes :integer useGrouping=never} bytes',
  'midi-short-tempo': 'a tempo event of {$bytes :integer} bytes',
  'midi-short-time-signature': 'a time signature event of {$bytes :integer} bytes',
  'midi-long-quantity': 'a variable-length quantity of more than four bytes',
  'midi-empty-file': 'an empty file',
  'midi-format-found': 'format {$format :integer useGrouping=never}',
  'midi-time-code': 'time code of {$frames :integer} frames a second and {$ticks :integer} ticks a frame',
  'midi-bytes-up-to': 'a file of at most {$bytes :integer} bytes',
  'midi-no-ticks': '0 ticks per quarter note',
  'midi-end-after-tracks':
    'the end of the file after {$read :integer useGrouping=never} of {$tracks :integer useGrouping=never} tracks',
  'midi-no-status': '{$byte} where an event begins',
  'midi-byte-in-event': '{$byte} in an event',
  'midi-status-found': 'status {$byte}',
  'midi-no-drum-notes': 'no notes for the drum set',
  'midi-zero-tempo': 'a tempo of 0 µs per quarter note',
  'midi-time-signature-found': 'time signature {$upper :integer}/2^{$power :integer}',
  'midi-meter-found': 'the time signature {$upper :integer}/{$lower :integer}',
  'midi-track-end': 'the end of the track',
  'midi-notes-of-channel':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} note of channel {$channel :integer}}} * {{{$notes} notes of channel {$channel :integer}}}',
  'midi-notes-of-key':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} note of key {$key :integer}}} * {{{$notes} notes of key {$key :integer}}}',
  'midi-notes-on-no-slot':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} note on no place of a beat}} * {{{$notes} notes on no place of a beat}}',
  'change-of-meter': 'a change to {$meter}',
  // Expected.
  'midi-short-quantity': '{$part :say} of at most four bytes',
  'midi-header-wanted': 'a header of 6 bytes or more',
  'midi-formats': 'format 0 or 1',
  'midi-ticks': 'ticks per quarter note',
  'midi-status-wanted': 'a status byte from 0x80 up',
  'midi-data-wanted': 'a data byte from 0x00 to 0x7F',
  'midi-event-wanted': 'a channel, system exclusive or meta event',
  'midi-time-signature-wanted': 'one such as 4/2^2',
  'midi-end-event': 'an end-of-track event before it',
  'midi-next-track': 'the next track',
  'midi-meters': 'a meter up to 32/32',
  'midi-drum-key': 'a key of the drum set on channel 10',
  'midi-notes-on-slots':
    'notes on 1, 2, 3, 4 or 6 places a beat, in at most {$bars :integer useGrouping=never} bars',
  'meter-throughout': '{$meter} throughout',
  // Repairs.
  'midi-damaged': 'the file is damaged: copy or export it again',
  'midi-cut-or-damaged': 'the file is cut short or damaged: copy or export it again',
  'midi-cut': 'the file is cut short: copy or export it again',
  'midi-choose-file': 'choose the Standard MIDI File itself',
  'midi-other-file': 'this is not a Standard MIDI File',
  'midi-export-again': 'export it again',
  'midi-export-format': 'export it as a type 0 or type 1 file',
  'midi-export-musical-time': 'export it in musical time (beats)',
  'midi-map-key': 'these notes are left out; map the key to a voice to keep them',
  'midi-other-notes': 'notes that have been changed since',
  'midi-notes-of-lesson': 'the notes of the lesson inside',
  'midi-notes-hold': 'the notes are read; sections, layers, forms and goals of that lesson are left out',
  'midi-left-out': 'they are left out',
  'midi-read-as': 'it was read as {$meter}',
});
