/** The page, the groove and the text of a lesson, in German. */
import type * as english from '../../english/desk/page.ts';
import { translation } from '../../message/translated.ts';

/** Words of `page`. */
export const page = translation<typeof english.page>()({
  exercises: 'Übungen',
  exercise: 'Übung {$n :integer}',
  slot: '{$where}, {$what}',
  add: 'Übung hinzufügen',
  addAfter: 'Darunter einfügen',
  duplicate: 'Verdoppeln',
  remove: 'Löschen',
  up: 'Nach oben',
  down: 'Nach unten',
  drag: 'Übung {$n :integer}, an eine andere Stelle ziehen',
  moved: 'Übung {$from :number} ist jetzt {$to :number}.',
  removedExercise: 'Übung {$n :integer} gelöscht.',
  pattern: 'Pattern',
  name: 'Name',
  notes: 'Hinweis für Schüler',
  strokes: 'Schläge',
  voice: 'Stimme, die geschrieben wird',
  hands: 'Hände',
  right: 'rechte Hand',
  left: 'linke Hand',
  both: 'beide Hände',
  noHands: 'keine Hände',
  moreTools: 'Mehr Werkzeuge für diese Übung',
  fewerTools: 'Werkzeuge schließen',
  divide: 'Teile des Schlags',
  divideInto: 'Den Schlag in {$n :integer} teilen',
  found: 'Gefunden: {$found}; erwartet: {$expected}.',
  hint: 'Vielleicht: {$hint}.',
  empty: 'Noch keine Übungen.',
  keys: 'Tasten',
  keysTitle: 'Alles mit der Tastatur',
  keyList: [
    ['← →', 'von Stelle zu Stelle'],
    ['↑ ↓', 'von Übung zu Übung'],
    ['Leertaste', 'Schlag an oder aus'],
    ['X A G', 'Schlag, Akzent, Ghost Note'],
    ['F D B', 'Flam, Drag, Buzz'],
    ['S I', 'Sidestick, Rimshot'],
    ['O', 'offen, Splash'],
    ['.', 'Pause'],
    ['R L', 'rechte Hand, linke Hand'],
    ['1 2 3 4 6', 'Teile des Schlags'],
    ['Eingabe', 'Übung darunter einfügen'],
    ['Alt ↑ ↓', 'Übung verschieben'],
    ['Strg Entf', 'Übung löschen'],
    ['Strg Z', 'rückgängig'],
    ['Strg Umschalt Z', 'wiederholen'],
    ['P', 'spielen oder anhalten'],
    ['C', 'Seite A oder Seite B hören'],
    ['Alt L', 'einen Takt wiederholen, den nächsten, alle'],
    ['V', 'die nächste Stimme schreiben'],
  ],
});

/** Words of `groove`. */
export const groove = translation<typeof english.groove>()({
  title: 'Der Groove, Hände und Füße',
  lead: 'Was sich unter jeder Übung wiederholt, und wie laut jede Hand und jeder Fuß neben der führenden Stimme ist.',
  leadVoice: 'führende Stimme',
  balance: 'Balance: {$voice :voice}',
  db: '{$db :number signDisplay=exceptZero} dB',
  addVoice: 'Stimme hinzufügen',
  removeVoice: 'Herausnehmen: {$voice :voice}',
  together: 'Alles zusammen',
  plan: 'Wer was spielt, vom Hocker aus gesehen',
  sides: {
    left: {
      hand: 'linke Hand',
      foot: 'linker Fuß',
    },
    right: {
      hand: 'rechte Hand',
      foot: 'rechter Fuß',
    },
  },
  nothing: 'Hier ruht es.',
  words: {
    above: 'über der führenden Stimme',
    level: 'gleich laut wie die führende Stimme',
    under: 'ein wenig darunter',
    wellUnder: 'deutlich darunter',
    soft: 'leise: gehört, nicht bemerkt',
    feathered: 'gefedert: gespürt, nicht gehört',
    gone: 'fast verschwunden',
  },
});

/** Words of `text`. */
export const text = translation<typeof english.text>()({
  title: 'Text der Lektion',
  problems: '.input {$n :integer} .match $n one {{{$n} Problem}} * {{{$n} Probleme}}',
  fine: 'Keine Probleme: Das ist eine Lektion.',
  at: 'Zeile {$line :integer}, Spalte {$column :integer}',
  warning: 'Ansehen',
  error: 'In Ordnung bringen',
});
