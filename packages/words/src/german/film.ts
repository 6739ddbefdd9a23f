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
    one: 'Übung {$from :integer}',
    row: 'Übungen {$from :integer} bis {$to :integer}',
    some: 'Übungen {$numbers :numbers}',
  },
  tempo: '{$bpm :integer} Schläge in der Minute',
  tempi: '{$from :integer} bis {$to :integer} Schläge in der Minute',
  buildUp: 'Der Groove, eine Hand, ein Fuß nach dem anderen',
  joins: '{$voice :voice} · {$limb :side}',
  countIn: 'Einzähler',
  barOf: 'Takt {$bar :integer} von {$bars :integer}',
  play: { pattern: 'die Übung', time: 'Time', rest: 'du bist dran' },
  chapters: {
    title: 'Titel',
    groove: 'Der Groove, eine Hand, ein Fuß nach dem anderen',
    exercise: '{$exercise}, {$bpm :integer} Schläge in der Minute',
  },
  captions: {
    title: 'Eine Stunde am Drumset: {$title}.',
    first: '{$voice :the at=start}, gespielt mit: {$limb :side}. Die Schläge: {$counts}.',
    joins:
      'Dazu kommt {$voice :the}, gespielt mit: {$limb :side}. Die Schläge: {$counts}. Bleibt alles andere, wie es war?',
    feathered:
      'Dazu kommt {$voice :the}, gefedert, gespielt mit: {$limb :side}. Die Schläge: {$counts}. So leise, dass man sie eher spürt als hört.',
    silent: 'nichts in diesem Takt',
    bars: '{$exercise}, {$bpm :integer} Schläge in der Minute. Erst mitzählen, dann mitspielen.',
    plays: '{$voice :the at=start} spielt {$counts}.',
    together: 'Jeder Schlag fällt mit einem von {$lead :the case=dative} zusammen.',
    alone: 'Achte auf die Schläge zwischen denen von {$lead :the case=dative}: {$counts}.',
    time: 'Time: der Groove allein. Nichts daran ändert sich.',
    rest: 'Du bist dran: spiele, was du eben gehört hast.',
  },
});
