/** What a printed sheet says, and what is read out of it, in German. */
import type * as english from '../english/sheet.ts';
import { translation } from '../message/translated.ts';

/** The names of the forms that every lesson has, as they stand within a sentence. */
export const forms = translation<typeof english.forms>()({
  loop: 'Schleife',
  'four and two': 'vier und zwei',
  time: 'Time',
});

/** The messages. */
export const sheet = translation<typeof english.sheet>()({
  groove: 'Groove',
  buildUp: 'Schicht um Schicht',
  feathered: 'gefedert',
  part: '{$voice}, {$loudness}',
  exercisePart: 'die Übung, {$loudness}',
  goal: 'Ziel {$bpm :number}',
  straight: 'gerade',
  swing: 'Swing',
  swingByTempo: 'Swing nach Tempo',
  swingOf: 'Swing {$ratio :number maximumFractionDigits=4}:1',
  swingOfSixteenths: 'Swing {$ratio :number maximumFractionDigits=4}:1 auf Sechzehnteln',
  leftHanded: 'Linkshänder',
  playedWith: { sticks: 'Stöcke', brushes: 'Besen' },
  key: {
    accent: 'Akzent',
    ghost: 'Ghost Note',
    flam: 'Flam',
    drag: 'Drag',
    buzz: 'Buzz',
    sweep: 'Wischen mit dem Besen',
    bell: 'Kuppe des Rides',
    splash: 'Splash mit dem Fuß',
  },
  fill: 'Fill',
  fillWithout: 'Fill, ohne {$voices}',
  without: 'ohne {$voices}',
  contents: 'Inhalt',
  keyToNotation: 'Zeichenerklärung',
  index: 'Verzeichnis nach Stimme und Rhythmus',
  rhythms: {
    beats: 'Schläge',
    quarters: 'Viertel',
    eighths: 'Achtel',
    triplets: 'Triolen',
    sixteenths: 'Sechzehntel',
    sextuplets: 'Sextolen',
    'thirty-seconds': 'Zweiunddreißigstel',
    duplets: 'Duolen',
    quadruplets: 'Quartolen',
    quintuplets: 'Quintolen',
    septuplets: 'Septolen',
  },
  playTimes: '{$times :integer}-mal spielen',
  repeated:
    '.input {$times :integer} .match $times 2 {{Die Takte {$bars} werden zweimal gespielt.}} * {{Die Takte {$bars} werden {$times}-mal gespielt.}}',
  ending: 'Klammer für Mal {$times}: Takte {$bars}.',
  inExercises: '{$voice} (Übungen)',
  hands: 'rechte, linke Hand',
  manner: {
    accent: 'Akzent',
    ghost: 'Ghost Note',
    flam: 'Flam',
    drag: 'Drag',
    buzz: 'Buzz',
    sweep: 'Wischen',
    bell: 'Kuppe',
    splash: 'Splash',
  },
  nothingPlayed: 'Es wird nichts gespielt.',
  bar: 'Takt {$bar :integer}. {$text}',
  exercise: 'Übung {$number :integer}',
  exerciseNamed: 'Übung {$number :integer}: {$name}',
  fromBar: '{$exercise}, ab Takt {$bar :integer}',
  page: '{$title}, Seite {$page :integer} von {$pages :integer}',
});

/** The parts of the sentence that tells a form. */
export const form = translation<typeof english.form>()({
  pattern: '.input {$bars :integer} .match $bars one {{{$bars} Takt Pattern}} * {{{$bars} Takte Pattern}}',
  time: '.input {$bars :integer} .match $bars one {{{$bars} Takt Time}} * {{{$bars} Takte Time}}',
  rest: '.input {$bars :integer} .match $bars one {{{$bars} Takt Pause}} * {{{$bars} Takte Pause}}',
  ending: '{$section}, am Ende {$strokes}',
  lastEnding: '{$section}, am Ende des letzten {$strokes}',
  restOn: 'eine Pause auf der {$beat :integer}',
  strokesOn: '{$voices} auf {$places :list}',
  beat: 'der {$beat :integer}',
  slot: 'der {$beat :integer} „{$syllable :syllable}“',
  middleTriplet: 'der mittleren Triole der {$beat :integer}',
  lastTriplet: 'der letzten Triole der {$beat :integer}',
  next: '{$before}; dann {$section}',
  whole:
    '.input {$times :integer} .match $times 1 {{{$sections}.}} 2 {{{$sections}; das Ganze zweimal.}} * {{{$sections}; das Ganze {$times}-mal.}}',
});
