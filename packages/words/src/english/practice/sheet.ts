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
  exercise: 'Exercise {$n :integer}',
  open: '.input {$name :string} .match $name || {{Practise exercise {$n :integer}}} * {{Practise exercise {$n :integer}: {$name}}}',
  timeOnly: 'Time alone',
  openTime: 'Practise the groove with nothing over it',
  tempo: '{$bpm :number} bpm',
  tempi: '{$from :number} to {$to :number} bpm',
  feels: {
    even: 'even',
    triplet: 'triplet swing',
    'by tempo': 'swing by tempo',
  } satisfies Readonly<Record<FeelName, string>>,
  swing: 'swing {$ratio}',
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
  all: 'whole sheet',
  each: 'Every exercise',
} as const satisfies Readonly<Record<StandardFormat, string>> & Readonly<Record<string, string>>;

/** Words of `settings`. */
export const settings = {
  title: 'This page',
  theme: 'Light or dark',
  themes: {
    system: 'as the system',
    light: 'light',
    dark: 'dark',
  },
  language: 'Language',
} as const;
