import type { CoachFact } from '@shedbook/coach';
import { expect, it } from 'vitest';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { say } from './say.ts';
import type { Sayable } from './sayable.ts';

const sore = {
  fact: 'sore-spot',
  limb: 'left hand',
  voice: 'snare',
  place: { fact: 'syllable', syllable: 'let', beat: 1 },
} as const;
const skill = {
  fact: 'skill-over',
  cells: { fact: 'cell-move', from: '...', to: '..x' },
  limb: 'left hand',
  over: ['right hand', 'right foot'],
} as const;
const alone = { fact: 'skill-alone', cells: { fact: 'cell', cell: '..x' }, limb: 'left hand' } as const;

function both(fact: Sayable): readonly string[] {
  return [say(fact, ENGLISH), say(fact, GERMAN)];
}

/** One of each that stands by itself. */
const TOLD: readonly CoachFact[] = [
  { fact: 'seldom-holds', skill, percent: 50, follows: { fact: 'needs-skill', more: 2 } },
  { fact: 'seldom-holds', skill: alone, percent: 50, follows: { fact: 'again-from', bpm: 80 } },
  { fact: 'begin-lesson', lesson: 'First swing' },
  { fact: 'nearest-new', adds: { fact: 'adds-skill', skill: alone } },
  { fact: 'nearest-new', adds: { fact: 'adds-skills', skill, more: 3 } },
  { fact: 'not-steady', bpm: 80 },
  { fact: 'not-steady-there', sore, bpm: 80 },
  { fact: 'teacher-set' },
  { fact: 'teacher-noted', what: { fact: 'teacher-pinned' }, note: 'Whisper the ghost notes.' },
  { fact: 'played-shaky', day: -9 },
  { fact: 'played-firm', day: -1 },
  { fact: 'played-learning', day: 0 },
  { fact: 'listen-for', what: { fact: 'played-clean', day: -9, bpm: 88, goalBpm: 120 }, sore },
  { fact: 'new-today' },
  { fact: 'once-more' },
  { fact: 'warm-up' },
  { fact: 'time-alone' },
  { fact: 'rest-now' },
  { fact: 'play-freely' },
  { fact: 'no-time-today' },
  { fact: 'no-lesson-yet' },
  { fact: 'taken-apart', exercises: 4 },
  { fact: 'set-and-gone', exercises: 1 },
  { fact: 'apart' },
  { fact: 'apart-there', sore },
  { fact: 'put-back' },
  { fact: 'next-on-sheet', adds: { fact: 'adds-nothing' } },
  { fact: 'begin-swing', lesson: 'First swing' },
  { fact: 'begin-easiest', lesson: 'Sixteenth-note funk' },
  { fact: 'after-set', adds: { fact: 'adds-nothing' } },
  { fact: 'next-on-sheet', adds: { fact: 'adds-count', exercise: 3 } },
  { fact: 'after-set', adds: { fact: 'adds-groove' } },
  {
    fact: 'seldom-holds',
    skill: { fact: 'skill-hands', cells: alone.cells, hands: 'R L' },
    percent: 50,
    follows: { fact: 'again-from', bpm: 80 },
  },
  { fact: 'after-set', adds: { fact: 'adds-clapping' } },
  { fact: 'beside-next', adds: { fact: 'adds-nothing' } },
  { fact: 'beside-nearest', adds: { fact: 'adds-nothing' } },
  { fact: 'set-not-clean', times: 3 },
];

it('[CH32] why something is played is said by days, tempi and places', () => {
  expect(both(TOLD[12] as CoachFact)).toEqual([
    'Last played 9 days ago and clean at 88 on the way to 120. Listen for the left hand (snare) on the let of 1.',
    'Zuletzt vor 9 Tagen gespielt, sauber bei 88 auf dem Weg zu 120. Zu hören: linke Hand (Snare) auf dem „ole“ der 1.',
  ]);
  // standard: CLDR, relative days: today and yesterday have names
  expect([TOLD[10], TOLD[11]].map((fact) => both(fact as CoachFact)[0])).toEqual([
    'Last played yesterday and firm; time to see that it still is.',
    'Last played today and on its way.',
  ]);
  expect(both(TOLD[22] as CoachFact)).toEqual([
    '1 of the exercises that your teacher set is no longer in the lessons.',
    '1 der aufgegebenen Übungen steht nicht mehr in den Lektionen.',
  ]);
});

it('[CH34] what to give next is said with the skill that does not hold', () => {
  expect(both(TOLD[0] as CoachFact)).toEqual([
    '"..." to "..x" in the left hand with right hand and right foot holds about 50 times in 100. This one needs it, and 2 more that are new.',
    'linke Hand, „...“ zu „..x“, dazu rechte Hand und rechter Fuß: gelingt etwa 50 von 100 Mal. Diese Übung braucht das und noch 2 Neue.',
  ]);
});

it("[CH4300] counting and clapping is given in a teacher's words", () => {
  expect(both(TOLD[30] as CoachFact)).toEqual([
    'Nothing that was heard is shaky; this comes next on the sheet: count and clap it first, since it gives the subdivision that exercise 3 needs.',
    'Nichts Gehörtes wackelt; das kommt auf dem Blatt als Nächstes: erst zählen und klatschen, denn das gibt die Unterteilung, die Übung 3 braucht.',
  ]);
});

it('[CH38] nothing that is said counts days in a row, gives points or judges by colour', () => {
  const english = TOLD.map((fact) => say(fact as Sayable, ENGLISH));
  const german = TOLD.map((fact) => say(fact as Sayable, GERMAN));
  for (const sentence of [...english, ...german]) {
    expect(sentence).toMatch(/^[\p{Lu}\d"l].*\.$/u);
    expect(sentence).not.toMatch(
      /streak|in a row|points?\b|score|badge|level up|\bred\b|\bgreen\b|!|bad\b|wrong\b|Punkte|Serie|\brot\b|grün|falsch/i,
    );
  }
});

it('[CH37] local rules and a licensed practitioner come first, and pain stops the playing', async () => {
  const { care } = await import('../english/hearing/care.ts');
  expect(care.first).toMatch(/local rules.*licensed practitioner/i);
  expect(care.pain).toMatch(/^Stop when something hurts/);
  expect(care.pain).toMatch(/licensed practitioner/);
  expect(care.protect).toMatch(/ear protection/);
});
