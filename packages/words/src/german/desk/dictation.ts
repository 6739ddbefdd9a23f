/** Writing down what is played, in German. */
import type * as english from '../../english/desk/dictation.ts';
import { translation } from '../../message/translated.ts';

/** Words of `dictation`. */
export const dictation = translation<typeof english.dictation>()({
  opens: 'Aufnahme mitschreiben',
  title: 'Spielen, und es steht da',
  lead: 'Eine Aufnahme machen oder aus einer Datei nehmen: Klang oder MIDI. Sie wird in Takt ({$meter}) und Feel ({$feel}) dieser Lektion aufgeschrieben. Nichts verlässt dieses Gerät.',
  record: 'Mit dem Mikrofon aufnehmen',
  kit: 'E-Schlagzeug aufnehmen',
  file: 'Aus einer Datei',
  stop: 'Das war es',
  recording: {
    microphone: 'Es wird aufgenommen. Ein paar Takte spielen.',
    kit: 'Das Schlagzeug wird gehört. Ein paar Takte spielen.',
  },
  writing: 'Es wird aufgeschrieben …',
  failed: {
    microphone: 'Hier ist kein Mikrofon, oder es darf nicht benutzt werden.',
    kit: 'Hier ist kein E-Schlagzeug, oder es darf nicht benutzt werden.',
    file: 'Das ließ sich nicht lesen: weder Klang noch MIDI.',
  },
  found:
    '.input {$bars :integer} .match $bars one {{{$bars} Takt {$meter} bei {$bpm :integer}, Feel {$feel}.}} * {{{$bars} Takte {$meter} bei {$bpm :integer}, Feel {$feel}.}}',
  misfits:
    '.input {$strokes :integer} .match $strokes one {{{$strokes} Schlag liegt auf keinem Platz und bleibt weg.}} * {{{$strokes} Schläge liegen auf keinem Platz und bleiben weg.}}',
  groove: 'Was sich in jedem Takt wiederholt, als Übung',
  exercise: 'Übung {$n :exercise}',
  keep: '.input {$n :integer} .match $n 0 {{Behalten}} one {{{$n} Übung behalten}} * {{{$n} Übungen behalten}}',
  kept: '.input {$n :integer} .match $n one {{{$n} Übung steht auf dem Blatt.}} * {{{$n} Übungen stehen auf dem Blatt.}}',
});
