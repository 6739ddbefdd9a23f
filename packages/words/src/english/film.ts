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
    inBeat: 'Each beat is counted “{$counts}”: “{$last}” is the last part of beat 2.',
    first: 'First {$voice :the} ({$limb :side}): {$plays}.',
    joins: 'Now add {$voice :the} ({$limb :side}): {$plays}.',
    unchanged: 'Listen: nothing else changes.',
    feathered:
      'Now add {$voice :the} ({$limb :side}): {$plays}, so softly that you sense it more than you hear it.',
    on: 'on {$counts :list type=series}',
    marked: '{$mark} on {$counts :list type=series}',
    ways: '{$ways :list type=apart}',
    inBar: 'bar {$bar :integer}: {$plays}',
    silent: 'nothing in this bar',
    bars: '{$exercise}, {$bpm :integer} beats a minute.',
    barsOver: '{$exercise}, {$bpm :integer} beats a minute, over {$groove :voices}.',
    countAlong: 'Count along, then play along.',
    counted: 'A voice counts: {$counts}.',
    plays: '{$voice :the at=start}: {$plays}.',
    playsWith: '{$voice :the at=start} ({$limb :side}): {$plays}.',
    together: 'Listen: every stroke falls exactly together with {$lead :the}.',
    alone: 'Listen for what falls between the strokes of {$lead :the}: {$counts}.',
    time: 'Time: now the groove goes on alone. Does it stay just as it was?',
    timeAgain: 'Time: the groove alone.',
    again:
      '.input {$times :integer} .match $times one {{All of it once more, just the same.}} * {{All of it {$times} more times, just the same.}}',
    rest: 'Your turn: play what you have just heard.',
  },
} as const;
