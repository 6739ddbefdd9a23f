/** Playing an exercise, in German. */
import type * as english from '../../english/practice/stage.ts';
import { translation } from '../../message/translated.ts';
import { footSwitch } from '../foot-switch.ts';

/** Words of `stage`. */
export const stage = translation<typeof english.stage>()({
  back: 'Zum Blatt',
  next: 'Nächste Übung',
  previous: 'Vorige Übung',
  play: 'Abspielen',
  stop: 'Anhalten',
  ready: 'Bereit',
  countIn: 'Einzählen',
  bar: 'Takt',
  beat: 'Zählzeit',
  layer: 'Schicht {$n :integer} von {$of :integer}: {$names}',
  hearExample: 'Beispiel hören',
  example: 'Beispiel: wird dir zuerst vorgespielt',
  everyLimb: 'Alle Gliedmaßen',
  barOf: 'Takt {$bar :integer} von {$bars :integer}',
  listen: 'Hören',
  answer: 'Du',
  time: 'Time',
  round: 'Runde {$n :integer}',
  ending: 'Letzter Takt: {$what} auf {$beat}',
  groove: 'Time: der Groove allein',
  free: 'Freies Spiel',
  freeLead: 'Spiel, was du willst. Nichts wird beurteilt; die Minuten werden notiert.',
  freeWith: 'Dazu',
  freeGroove: 'Der Groove',
  freeClick: 'Nur der Klick',
  ledge: 'Spielen',
  keys: 'Tasten und Pedal',
  keyList: [
    ['Leertaste', 'abspielen, anhalten'],
    ['← →', 'vorige, nächste Übung'],
    ['↑ ↓', 'schneller, langsamer'],
    ['T', 'Tempo klopfen'],
    ['C', 'das war sauber'],
    ['S', 'ich bin gestolpert'],
    ['G', 'alle Gliedmaßen oder nur die Übung'],
    ['Bild ↓', 'rechtes Pedal: abspielen; auf der Leiter: das war sauber'],
    ['Bild ↑', 'linkes Pedal: anhalten; wenn es still ist: nächste Übung'],
    ['Esc', 'zurück zum Blatt'],
  ],
});

/** Words of `pedal`. */
export const pedal = translation<typeof english.pedal>()({
  title: 'Fußschalter über MIDI',
  ...footSwitch,
  actions: {
    next: 'Rechtes Pedal',
    previous: 'Linkes Pedal',
    toggle: 'Abspielen oder anhalten',
  },
});

/** Words of `tempo`. */
export const tempo = translation<typeof english.tempo>()({
  title: 'Tempo',
  bpm: 'bpm',
  slower: 'Langsamer',
  faster: 'Schneller',
  tap: 'Klopfen',
  slider: 'Tempo in Schlägen in der Minute',
});
