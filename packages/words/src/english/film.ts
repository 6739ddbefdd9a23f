/** What a lesson video shows and says in its captions, in English. */
import { counts } from './counts.ts';
import { marks, voices } from './drum-set.ts';

/** The messages. */
export const film = {
  counts,
  marks,
  voices,
  teacher: 'with {$name}',
  exercises: {
    one: 'Exercise {$from :exercise}',
    row: 'Exercises {$from :exercise} to {$to :exercise}',
    some: 'Exercises {$numbers :exercises}',
  },
  tempo: '{$bpm :integer} beats a minute',
  tempi: '{$from :integer} to {$to :integer} beats a minute',
  joins: '{$voice :voice} · {$limb :side}',
  countIn: 'Count-in',
  barOf: 'bar {$bar :integer} of {$bars :integer}',
  play: { pattern: 'the exercise', time: 'time', rest: 'your turn' },
  chapters: {
    title: 'Title',
    groove: 'The groove, one limb at a time',
    exercise: '{$exercise}, {$bpm :integer} beats a minute',
  },
  captions: {
    title: 'A lesson for the drum set: {$title}.',
    inBeat: 'Count each beat {$counts}.',
    first: '{$voice :the at=start} is played by the {$limb :side}: {$counts}.',
    joins:
      'Now the {$limb :side} joins on {$voice :the}: {$counts}. Does everything before it stay the same?',
    feathered:
      'Now the {$limb :side} feathers {$voice :the}: {$counts}. So softly that you sense it more than you hear it.',
    silent: 'nothing in this bar',
    bars: '{$exercise} at {$bpm :integer} beats a minute.',
    barsOver: '{$exercise} at {$bpm :integer} beats a minute, over {$groove :voices}.',
    countAlong: 'Count along, then play.',
    counted: 'A voice counts: {$counts}.',
    plays: '{$voice :the at=start} plays {$counts}.',
    playsWith: '{$voice :the at=start} ({$limb :side}) plays {$counts}.',
    together: 'Listen: every stroke falls together with one of {$lead :the}.',
    alone: 'Listen for the strokes that fall between those of {$lead :the}: {$counts}.',
    time: 'Time: now the groove goes on alone. Does it stay just as it was?',
    rest: 'Your turn: play what you have just heard.',
  },
} as const;
