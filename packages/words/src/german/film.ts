/** What a lesson video shows and says in its captions, in German. */
import type { film as english } from '../english/film.ts';
import { translation } from '../message/translated.ts';
import { counts } from './counts.ts';
import { marks, voices } from './drum-set.ts';

/** The messages. */
export const film = translation<typeof english>()({
  counts,
  marks,
  voices,
  teacher: 'mit {$name}',
  exercises: {
    one: 'Übung {$from :exercise}',
    row: 'Übungen {$from :exercise} bis {$to :exercise}',
    some: 'Übungen {$numbers :exercises}',
  },
  tempo: '{$bpm :integer} Schläge in der Minute',
  tempi: '{$from :integer} bis {$to :integer} Schläge in der Minute',
  joins: '{$voice :voice} · {$limb :side}',
  countIn: 'Einzähler',
  barOf: 'Takt {$bar :integer} von {$bars :integer}',
  play: { pattern: 'die Übung', time: 'Time', rest: 'du bist dran' },
  chapters: {
    title: 'Titel',
    groove: 'Der Groove, Schicht um Schicht',
    exercise: '{$exercise}, {$bpm :integer} Schläge in der Minute',
  },
  captions: {
    title: 'Eine Lektion für das Drumset: {$title}.',
    inBeat: 'Jeder Schlag wird „{$counts}“ gezählt: „{$last}“ ist der letzte Teil von Schlag 2.',
    first: 'Zuerst {$voice :the} ({$limb :side}): {$plays}.',
    joins: 'Dazu kommt {$voice :the} ({$limb :side}): {$plays}.',
    unchanged: 'Hör hin: Sonst ändert sich nichts.',
    feathered:
      'Dazu kommt {$voice :the} ({$limb :side}): {$plays}, so leise, dass man die Schläge eher spürt als hört.',
    on: 'auf {$counts :list type=series}',
    marked: '{$mark} auf {$counts :list type=series}',
    ways: '{$ways :list type=apart}',
    inBar: 'Takt {$bar :integer}: {$plays}',
    silent: 'nichts in diesem Takt',
    bars: '{$exercise}, {$bpm :integer} Schläge in der Minute.',
    barsOver: '{$exercise}, {$bpm :integer} Schläge in der Minute, zu {$groove :voices}.',
    countAlong: 'Zähl mit, dann spiel mit.',
    counted: 'Eine Stimme zählt: {$counts}.',
    plays: '{$voice :the at=start}: {$plays}.',
    playsWith: '{$voice :the at=start} ({$limb :side}): {$plays}.',
    together: 'Hör hin: Jeder Schlag fällt genau mit {$lead :the case=dative} zusammen.',
    alone: 'Achte auf die Schläge, bei denen {$lead :the} schweigt: {$counts}.',
    time: 'Time: jetzt der Groove allein. Bleibt er genau, wie er war?',
    timeAgain: 'Time: der Groove allein.',
    again:
      '.input {$times :integer} .match $times one {{Alles noch einmal genauso.}} * {{Alles noch {$times}-mal genauso.}}',
    rest: 'Du bist dran: spiele, was du eben gehört hast.',
  },
});
