/** Hearing, composing and the lesson room, in German. */
import type * as english from '../../english/desk/sound.ts';
import { translation } from '../../message/translated.ts';
import { footSwitch } from '../foot-switch.ts';
import { forms } from '../sheet.ts';

/** Words of `sound`. */
export const sound = translation<typeof english.sound>()({
  play: 'Spielen',
  stop: 'Anhalten',
  ledge: 'Klang',
  what: 'Was gespielt wird',
  exercise: 'Übung {$n :integer}',
  timeOnly: 'Nur Time',
  tempo: 'Tempo',
  tempoRange: 'Ein Tempo von {$least :integer} bis {$most :integer}.',
  slower: 'Langsamer',
  faster: 'Schneller',
  feel: 'Feel',
  swing: 'Swing, lang zu kurz',
  click: 'Klick',
  loop: 'Schleife',
  loopBar: 'Takt {$n :integer} wiederholen',
  oneBar: 'Einen Takt wiederholen',
  barOf: '{$what}, Takt {$n :integer}',
  compare: 'A B: Seite {$side} erklingt; drücken für die andere Seite',
  side: 'Was unten eingestellt ist, gehört zu Seite',
  form: 'Form',
  forms,
  ownForm: '{$name} (aus dieser Lektion)',
  layers: 'Schichten',
  all: 'alle',
  balance: 'Balance',
  mute: 'Stumm: {$voice :voice}',
  settings: 'Mehr zum Klang',
  loading: 'Das Set wird aufgebaut …',
  failed: 'Es kam kein Ton. Sieh nach, ob dieses Gerät einen Ausgang hat, und versuch es noch einmal.',
});

/** Words of `compose`. */
export const compose = translation<typeof english.compose>()({
  title: 'Komponieren',
  lead: 'Wähle, was auf einer Zählzeit geschehen darf; ein Blatt wird vorgeschlagen, das Leichteste zuerst. Was geschrieben ist, bleibt, bis du es einsetzt.',
  vocabulary: 'Wortschatz',
  count: 'Wie viele Takte',
  another: 'Ein anderes Blatt',
  strokesMost: 'Höchstens Schläge im Takt',
  silenceMost: 'Höchstens stille Zählzeiten im Takt',
  noLimit: 'ohne Grenze',
  exercises: 'Jede Übung ist',
  singleBars: 'Takte für sich',
  phrases: {
    'call-and-answer': 'ein Ruf mit Antwort',
    aaba: 'eine Phrase a a b a',
    sentence: 'ein Satz',
  },
  phraseBars: 'Takte in einer Phrase',
  idiom: 'Geläufige Figuren',
  everyMove: 'keine: jeder Übergang zählt',
  idiomShare: '{$percent :integer} von 100',
  themes: 'als Themen',
  headings: 'Jeden Block nach seiner Figur benennen',
  keep: 'Behalten',
  kept: 'behalten',
  written: 'Auf dem Blatt',
  propose: 'Ein Blatt vorschlagen',
  proposed: 'Vorschlag',
  proposedLead: 'Noch ist nichts geschrieben: nimm, was dir gefällt, und setze es ein.',
  take: 'Nehmen',
  use: 'Aufs Blatt setzen',
  behind: 'Hinter das Geschriebene setzen',
  eachAfter: 'Jede hinter ihre Vorlage setzen',
  instead:
    '.input {$n :integer} .match $n 0 {{Zwischen die behaltenen setzen}} one {{An die Stelle der {$n} nicht behaltenen setzen}} * {{An die Stelle der {$n} nicht behaltenen setzen}}',
  putAway: 'Weglegen',
  placed:
    '.input {$n :integer} .match $n one {{{$n} Übung aufs Blatt gesetzt.}} * {{{$n} Übungen aufs Blatt gesetzt.}}',
  answering: 'Zweite Stimme',
  alone: 'keine',
  inBeat: '{$n :integer} je Zählzeit',
  ownCell: 'Eine eigene Zelle',
  division: 'Stellen in der Zählzeit',
  places: 'Stellen antippen',
  addCell: 'In den Wortschatz',
  second: 'Zweiter Durchgang: teilen, verteilen, betonen, Hände, Fill',
  secondLead: 'Macht aus geschriebenen Übungen neue, die du einsetzt.',
  pass: 'Was',
  rule: 'Wie',
  over: 'Woraus',
  all: 'alle Übungen',
  proposePass: 'Vorschlagen',
  passes: {
    share: 'Mit der Bassdrum teilen',
    kit: 'Über die Trommeln',
    accents: 'Akzente',
    hands: 'Hände',
    fill: 'Ein Fill nach vier Takten',
  },
  rules: {
    share: {
      'beats-below': 'Zählzeiten auf der Bassdrum',
      'long-below': 'lange Schläge auf der Bassdrum',
      'by-turns': 'im Wechsel',
      'accents-below': 'Akzente auf der Bassdrum',
    },
    kit: {
      'by-beat': 'mit jeder Zählzeit',
      'by-stroke': 'mit jedem Ton',
      'down-the-bar': 'im Takt hinab',
      'accents-on-toms': 'Akzente auf den Toms',
    },
    accents: {
      'on-the-beat': 'auf dem Schlag',
      'off-the-beat': 'neben dem Schlag',
      'first-of-group': 'Erster jeder Gruppe',
      'last-of-group': 'Letzter jeder Gruppe',
      'every-third': 'jeder dritte Ton',
      free: 'nach Zufall',
    },
    hands: {
      'by-turns': 'im Wechsel',
      'by-place': 'jede Stelle ihre Hand',
      doubles: 'zwei je Hand',
      paradiddle: 'Paradiddle',
    },
    fill: { 'one-beat': 'ein Schlag', 'two-beats': 'zwei Schläge' },
  },
  difficulty: 'Wie schwer jeder Takt gegen diesen Groove ist',
  why: 'Warum Takt {$n :integer} so schwer ist',
  points: '{$points :number minimumFractionDigits=1 maximumFractionDigits=1} Punkte',
  easiest: 'am leichtesten',
  hardest: 'am schwersten',
  impossible: 'Daraus lässt sich noch nichts komponieren',
  working: 'Wird komponiert …',
});

/** Words of `room`. */
export const room = translation<typeof english.room>()({
  leave: 'Unterricht verlassen',
  next: 'Nächste Übung',
  previous: 'Vorige Übung',
  of: '{$n :integer} von {$all :integer}',
  nextAfter: 'Weiter nach',
  loops: '.input {$n :integer} .match $n 0 {{nie}} one {{{$n} Durchgang}} * {{{$n} Durchgängen}}',
  hint: 'Pfeiltasten wechseln die Übung, die Leertaste spielt und hält an.',
  groove: 'Groove',
});

/** Words of `pedal`. */
export const pedal = translation<typeof english.pedal>()({
  title: 'Fußschalter',
  ...footSwitch,
  actions: {
    next: 'Nächste Übung',
    previous: 'Vorige Übung',
    toggle: 'Spielen oder anhalten',
  },
});
