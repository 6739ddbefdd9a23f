/** How to practise, in German. */
import type * as english from '../../english/practice/setting.ts';
import { translation } from '../../message/translated.ts';
import { SET_UP_NAMES } from '../set-ups.ts';

/** Words of `setting`. */
export const setting = translation<typeof english.setting>()({
  title: 'Wie du übst',
  open: 'Mehr',
  done: 'Fertig',
  form: 'Form',
  forms: {
    loop: 'Schleife',
    'four and two': 'Vier und zwei',
    time: 'Time',
    example: 'Beispiel',
  },
  buildUp: 'Schicht um Schicht',
  trade: '{$bars :integer} und {$bars :integer} im Wechsel',
  layers: 'Was spielt',
  layer: '{$n :integer}. {$names}',
  pattern: 'Übung',
  mine: 'Ich spiele',
  mineHint: 'Was du selbst spielst, schweigt in der Aufnahme.',
  limb: '{$limb}: {$what}',
  click: 'Klick',
  clicks: {
    all: 'Alle Zählzeiten',
    bar: 'Einmal im Takt',
    off: 'Aus',
  },
  clickOn: 'Auf {$beats}',
  and: 'und',
  gap: 'Lückentakte',
  gaps: '.input {$off :integer} .match $off 0 {{Keine}} * {{{$on :integer} an, {$off} aus}}',
  countAloud: 'Zum Klick laut zählen',
  guide: 'Raster im Schlag',
  guides: {
    1: 'Keines',
    2: 'Achtel',
    3: 'Triolen',
    4: 'Sechzehntel',
  },
  staff: 'Noten',
  staffs: {
    own: 'Die Übung',
    full: 'Alle Gliedmaßen',
  },
  setUp: 'Aufbau',
  setUps: SET_UP_NAMES,
});

/** Words of `ladder`. */
export const ladder = translation<typeof english.ladder>()({
  title: 'Tempoleiter',
  on: 'Die Leiter steigen',
  clean: 'Das war sauber',
  stumbled: 'Ich bin gestolpert',
  progress:
    '.input {$of :integer} .match $of one {{{$clean :integer} von {$of} sauberen Runde bei {$bpm :number}}} * {{{$clean :integer} von {$of} sauberen Runden bei {$bpm :number}}}',
  up: 'Hinauf auf {$bpm :number} ab der nächsten Runde.',
  down: 'Hinunter auf {$bpm :number} ab der nächsten Runde.',
  lowest: '{$bpm :number} ist die unterste Sprosse: wir bleiben hier.',
  stay: 'Wir bleiben bei {$bpm :number}.',
  more: '.input {$n :integer} .match $n one {{Noch eine saubere Runde.}} * {{Noch {$n} saubere Runden.}}',
  unheard: 'Diese Runde war nicht zu hören.',
  answers: {
    'no round yet': 'Spiel eine Runde bis ans Ende, dann sag, wie sie war.',
    'told already': 'Diese Runde ist gezählt. Die nächste zählt, wenn sie vorbei ist.',
    waits: 'Notiert: Es zählt, wenn die Runde vorbei ist.',
    noted: 'Notiert. Die Leiter bleibt, wo sie ist.',
  },
  arrived: '{$bpm :number}: das ist das Ziel. Schön gespielt.',
});
