/** What is wrong with a MusicXML file, in English. */
import type { ExpectedFact } from '@shedbook/core';
import type { InstrumentFact, MidiFact, MusicXmlFact } from '@shedbook/exchange';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for MusicXML files. */
export const musicxml = sentences<Exclude<MusicXmlFact, ExpectedFact | MidiFact>, InstrumentFact>()({
  // Found.
  'xml-character': 'a sign that XML does not allow here',
  'xml-ampersand': 'an "&" that stands for no sign; one that is meant is written "&amp;"',
  'xml-attribute': 'an attribute that is not written name="value"',
  'xml-attribute-twice': 'the attribute {$name} twice in one tag',
  'xml-name': 'a sign that no name in XML has, or a "<" that begins no tag',
  'xml-never-ended': '<{$name}>, which never ends',
  'xml-never-begun': '</{$name}>, which ends nothing',
  'xml-end-tag': 'an end tag that does not fit <{$name}> of line {$fromLine :integer useGrouping=never}',
  'xml-outside': 'something outside of the one element that holds all the others',
  'xml-without-element': 'no element',
  'xml-comment': 'a comment that is not written <!-- … -->, or has "--" in it',
  'xml-declaration':
    'a first line that is not written <?xml version="1.0"?>, or one like it at another place',
  'xml-breaks-off': 'the end of the file within a tag or a comment',
  'xml-out-of-place': 'a sign that cannot stand here',
  'xml-too-deep': 'more than {$most :integer} elements in each other',
  'xml-too-many': 'more than {$most :integer} elements',
  'definite-pitch': 'definite pitch',
  'unknown-instrument': 'an unknown instrument',
  instrument: '{$name}',
  'instrument-of-key': '{$name} (key {$key :integer})',
  'musicxml-notes-of':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} note of {$of :say}}} * {{{$notes} notes of {$of :say}}}',
  'musicxml-graces-alone':
    '.input {$notes :integer useGrouping=never} .match $notes one {{{$notes} grace note of the {$voice :voice} without its stroke}} * {{{$notes} grace notes of the {$voice :voice} without its stroke}}',
  'musicxml-no-sum': 'durations that have no exact sum',
  'musicxml-no-beats': 'a time without beats',
  'musicxml-beats': 'a time of {$beats} beats',
  'musicxml-duration': 'the duration "{$text}"',
  'musicxml-without-duration': 'a {$element} without duration',
  'musicxml-no-divisions': 'no divisions',
  'musicxml-backup-over': 'a backup over the bar line',
  'musicxml-after-bar': 'a stroke after the end of a bar of {$meter}',
  'musicxml-misfit': 'a {$voice :voice} stroke at {$place} of a whole note',
  'musicxml-root': 'the root element {$element}',
  'musicxml-zip-without': 'a zip archive without {$file}',
  'musicxml-no-root-file': 'a {$file} that names no root file',
  'musicxml-no-file': 'no file {$file} of a readable size in it',
  'musicxml-damaged-zip': 'a damaged zip archive',
  // Expected.
  'xml-well-formed': 'well-formed XML',
  'musicxml-drum-voice': 'a voice of the drum set',
  'musicxml-stroke-after': 'a stroke of the {$voice :voice} after it',
  'musicxml-fitting-divisions': 'divisions that fit together',
  'musicxml-one-meter': 'one meter such as 4/4 or 6/8',
  'musicxml-a-number-of-divisions': 'a number of divisions',
  'musicxml-divisions-first': 'divisions in the attributes of the first measure',
  'musicxml-backup-inside': 'a backup inside the bar',
  'musicxml-strokes-inside': 'strokes inside the bar',
  'musicxml-one-stroke': 'one stroke a voice on 1 to 8 places a beat',
  'musicxml-partwise': 'score-partwise',
  'musicxml-compressed': 'a compressed MusicXML file',
  // Repairs.
  'musicxml-graces-left-out': 'grace notes alone are left out',
  'musicxml-notes-left-out': 'these notes are left out',
  'musicxml-measure-left-out': 'the rest of this measure is left out',
  'musicxml-bars-left-out': 'this bar and all after it are left out',
  'musicxml-other-notes': 'notes that have been changed since',
  'musicxml-notes-of-lesson': 'the notes of the lesson inside',
  'musicxml-notes-hold': 'the notes are read; sections, layers, forms and goals of that lesson are left out',
  'musicxml-it-left-out': 'it is left out',
  'musicxml-to-bar-line': 'it was read as a backup to the bar line',
  'musicxml-save-partwise': 'save it part by part (partwise)',
  'musicxml-other-file': 'this is not a MusicXML score',
  'musicxml-save-again': 'save the score again, or uncompressed',
});
