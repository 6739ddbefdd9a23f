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
  failed: 'Dieser Browser gibt keinen Klang.',
});

/** Words of `compose`. */
export const compose = translation<typeof english.compose>()({
  title: 'Komponieren',
  lead: 'Wähle, was in einem Schlag geschehen darf; das Blatt schreibt sich selbst, das Leichteste zuerst.',
  vocabulary: 'Wortschatz',
  count: 'Wie viele Takte',
  seed: 'Blattnummer',
  another: 'Ein anderes Blatt',
  strokesMost: 'Höchstens Schläge im Takt',
  silenceMost: 'Höchstens stille Schläge im Takt',
  noLimit: 'ohne Grenze',
  idiom: 'Geläufige Figuren',
  everyMove: 'keine: jeder Übergang zählt',
  idiomShare: '{$percent :integer} von 100',
  themes: 'als Themen',
  headings: 'Jeden Block nach seiner Figur benennen',
  locked: 'Übung {$n :integer} behalten',
  keep: 'Behalten',
  use: 'Aufs Blatt setzen',
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
