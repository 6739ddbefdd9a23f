/** The sheet and what can be taken along, in English. */
import type { FeelName, StandardFormat } from '@shedbook/core';

/** Its single texts. */
export const page = {
  opening: 'Opening the sheet …',
  broken: 'This practice page is not complete. Ask your teacher for it again.',
  newer: 'There is a newer version of this sheet.',
  takeNewer: 'Use it now',
} as const;

/** Words of `sheet`. */
export const sheet = {
  exercises: 'The sheet',
  ways: 'On this page',
  exercise: 'Exercise {$n :exercise}',
  open: '.input {$name :string} .match $name || {{Practise exercise {$n :exercise}}} * {{Practise exercise {$n :exercise}: {$name}}}',
  timeOnly: 'Time alone',
  openTime: 'Practise the groove with nothing over it',
  tempo: '{$bpm :number} bpm',
  tempi: '{$from :number} to {$to :number} bpm',
  feels: {
    even: 'straight',
    triplet: 'triplet swing',
    'by tempo': 'swing by tempo',
  } satisfies Readonly<Record<FeelName, string>>,
  swing: 'swing {$ratio}',
  brushes: 'with brushes',
  before: 'First: {$heading}',
  empty: 'There are no exercises on this sheet; practise the groove.',
  by: 'Written by {$name}',
} as const;

/** Words of `downloads`. */
export const downloads = {
  title: 'To take along',
  lead: 'For paper, for other programs, and for the bus.',
  sheet: 'The sheet to print (PDF)',
  lesson: 'The lesson file',
  midi: 'MIDI',
  musicxml: 'MusicXML',
  audio: 'Sound (MP3)',
  film: 'Film',
  all: 'whole sheet',
  each: 'Every exercise',
} as const satisfies Readonly<Record<StandardFormat, string>> & Readonly<Record<string, string>>;

/** Words of `keeping`. */
export const keeping = {
  refused: 'This browser keeps nothing on this device: what you play is lost when the page is closed.',
  full: 'There is no room left on this device: what you play now is lost when the page is closed.',
  save: 'Save what there is',
} as const;

/** Words of `student`. */
export const student = {
  who: 'Who plays',
  title: 'Students on this device',
  lead: 'Each student has a log, takes and settings of their own. Nobody sees them anywhere else.',
  own: 'My name',
  add: 'Another student',
  keep: 'Keep',
  first: 'First student',
  plays: '{$name} plays',
  takeOff: 'Take {$name} off this device',
  takeOffLead: 'The log, the takes and the settings of {$name} are deleted for good. Save everything first.',
  takeOffNow: 'Delete now',
} as const;

/** Words of `settings`. */
export const settings = {
  title: 'This page',
  theme: 'Light or dark',
  trySound: 'Try the sound of this device',
  themes: {
    system: 'as the system',
    light: 'light',
    dark: 'dark',
  },
  language: 'Language',
} as const;
