/** The line check, in which the ear learns a kit, in German. */
import type * as english from '../english/line-check.ts';
import { translation } from '../message/translated.ts';

/** Every word of it. */
export const lineCheck = translation<typeof english.lineCheck>()({
  title: 'Dein Schlagzeug vorstellen',
  lead: 'Ein Linecheck: Du spielst jede Stimme dieser Lektion allein, und das Ohr lernt, wie sie hier klingt. Danach überhört es weniger Füße und Hi-Hats.',
  how: '.input {$voices :integer} .input {$seconds :integer} .match $voices one {{{$voices} Stimme, {$seconds} Sekunden: nach vier Zählzeiten acht gleichmäßige Schläge, so laut wie im Groove.}} * {{{$voices} Stimmen, {$seconds} Sekunden: für jede vier Zählzeiten, dann acht gleichmäßige Schläge, so laut wie im Groove. Dämpf mit der Hand ab, was nachklingt, während für die nächste vorgezählt wird.}}',
  holds:
    'Er gilt für dieses Schlagzeug, in diesem Raum, mit diesem Mikrofon. Was gelernt wurde, bleibt auf diesem Gerät; der Klang wird nicht behalten.',
  needs: 'Dafür muss das Mikrofon an sein.',
  start: 'Linecheck beginnen',
  leave: 'Abbrechen',
  next: '{$voice :voice at=start}: bereit machen',
  now: '{$voice :voice at=start}: spielen',
  order: 'In dieser Reihenfolge',
  states: { done: 'fertig', now: 'jetzt', next: 'kommt noch' },
  learning: 'Lernt: etwa zehn Sekunden, auf einem Telefon länger …',
  failed: 'Das Lernen ist abgebrochen, und nichts wurde geändert. Versuch es noch einmal.',
  result: {
    all: 'Jede Stimme war zu hören.',
    some: 'Nicht gut zu hören: {$voices :voices}. Spiel noch einmal, was fehlt, oder behalt den Rest.',
    none: 'Zum Lernen war zu wenig zu hören. Stell das Gerät näher, und spiel noch einmal.',
    nothing:
      'Jede Stimme war zu hören. Das Ohr kannte dieses Schlagzeug schon: Der Linecheck fügt nichts hinzu.',
  },
  missing: 'Spielen, was fehlt',
  whole: 'Alles noch einmal spielen',
  name: 'Wie du dieses Schlagzeug nennst',
  own: 'Mein Schlagzeug',
  keep: 'Behalten',
  kept: 'Behalten: Ab dem nächsten Start hört das Ohr mit „{$name}“.',
  full: 'Das ließ sich nicht behalten: Dieser Browser hat keinen Platz dafür oder behält nichts.',
  hears: 'Das Ohr hört mit',
  without: 'keinem Linecheck',
  old: '„{$name}“ stammt von einem früheren Stand des Ohrs und wird nicht verwendet. Mach ihn noch einmal.',
  others:
    'In „{$name}“ fehlen Stimmen dieser Lektion: {$voices :voices}. Sie können überhört werden, bis du ihn noch einmal machst.',
  rename: 'Namen ändern',
  taken: 'Diesen Namen hat schon ein anderer.',
  forget: '„{$name}“ vergessen',
});
