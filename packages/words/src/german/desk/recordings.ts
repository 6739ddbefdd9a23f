/** Recordings of exercises, in German. */
import type * as english from '../../english/desk/recordings.ts';
import { translation } from '../../message/translated.ts';

/** Words of `recordings`. */
export const recordings = translation<typeof english.recordings>()({
  title: 'Aufnahmen',
  hint: 'Übungen als Dateien zum Mitspielen: in jeder Form, bis zu jeder Schicht, in jedem Tempo.',
  opens: 'Aufnahmen machen',
  which: 'Welche Übungen',
  all: '.input {$n :integer} .match $n one {{die eine}} * {{alle {$n}}}',
  some: 'einige',
  usualForm: 'die Form, die hier spielt',
  stages: 'eine Aufnahme für jede Schicht, die dazukommt',
  startTempo: 'wie notiert: {$bpm :number}',
  format: 'Datei',
  formats: {
    wav: 'WAV',
    mp3: 'MP3',
    ogg: 'Ogg',
    flac: 'FLAC',
  },
  make: '.input {$n :integer} .match $n 0 {{Eine Übung wählen}} one {{Aufnahme machen}} * {{{$n} Aufnahmen machen}}',
  cancel: 'Abbrechen',
  making: '{$n :integer} von {$of :integer} wird aufgenommen …',
  made: '{$name} liegt bei den Downloads.',
  cancelled: 'Abgebrochen; nichts wurde behalten.',
  failed: 'Die Aufnahmen konnten nicht gemacht werden.',
});
