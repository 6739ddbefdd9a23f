/** What is said of a take, in English. */
import { countSyllable, type Subdivision, type Voice } from '@shedbook/core';
import type { HowOften, RemarkPlace } from '@shedbook/judge';
import { voices } from '../english/drum-set.ts';
import type { ReportCatalogue } from './catalogue.ts';

const number = (value: number, digits = 0): string => value.toFixed(digits).replace('-', '−');
const ms = (value: number): string => `${number(value)} ms`;
const the = (voice: Voice): string => `the ${voices[voice]}`;
const The = (voice: Voice): string => `The ${voices[voice]}`;
const list = (numbers: readonly number[]): string => numbers.join(', ').replace(/, (\d+)$/, ' or $1');
const often = ({ times, of }: HowOften): string => (times === of ? 'every time' : `${times} of ${of} times`);

const TRIPLETS = ['', 'middle triplet', 'last triplet'];

function place({ beat, slot, slots, bar }: RemarkPlace): string {
  const syllable = countSyllable(beat - 1, slot - 1, slots as Subdivision);
  const name = slots === 3 ? TRIPLETS[slot - 1] : slots === 6 ? `${slot}th of six` : syllable;
  const counted = slot === 1 ? `${beat}` : `the ${name} of ${beat}`;
  return `on ${counted}${bar === null ? '' : ` in bar ${bar}`}`;
}

/** The English catalogue. */
export const english: ReportCatalogue = {
  number,
  voices,
  place,
  sayings: {
    missing: (fact) => `${The(fact.voice)} ${place(fact.place)} is missing ${often(fact)}.`,
    'left-out': ({ voice, times, of }) =>
      times === of
        ? `${The(voice)} is not played at all.`
        : `${The(voice)} leaves out ${times} of its ${of} strokes.`,
    added: ({ voice, count }) => `${The(voice)} has ${count} strokes that are not written.`,
    early: (fact) => `${The(fact.voice)} ${place(fact.place)} comes ${ms(fact.ms)} early, ${often(fact)}.`,
    late: (fact) => `${The(fact.voice)} ${place(fact.place)} comes ${ms(fact.ms)} late, ${often(fact)}.`,
    before: (fact) =>
      `${The(fact.voice)} comes ${ms(fact.ms)} before ${the(fact.lead)}${fact.apart ? ': one hears two strokes instead of one' : ''}.`,
    after: (fact) =>
      `${The(fact.voice)} comes ${ms(fact.ms)} after ${the(fact.lead)}${fact.apart ? ': one hears two strokes instead of one' : ''}.`,
    unsteady: (fact) => `${The(fact.voice)} is unsteady: its strokes lie ±${ms(fact.ms)} around their place.`,
    slows: ({ fromBpm, toBpm }) => `It slows down from ${number(fromBpm)} to ${number(toBpm)}.`,
    hurries: ({ fromBpm, toBpm }) => `It hurries from ${number(fromBpm)} to ${number(toBpm)}.`,
    wanders: ({ percent }) => `The tempo changes by ${number(percent, 1)} % from bar to bar.`,
    slower: ({ bpm, askedBpm }) =>
      `It is played at ${number(bpm)}, slower than the ${number(askedBpm)} asked.`,
    faster: ({ bpm, askedBpm }) =>
      `It is played at ${number(bpm)}, faster than the ${number(askedBpm)} asked.`,
    'flat-swing': ({ ratio, askedRatio }) =>
      `The swing is too even: ${number(ratio, 1)}:1 instead of ${number(askedRatio, 1)}:1.`,
    'sharp-swing': ({ ratio, askedRatio }) =>
      `The swing is too sharp: ${number(ratio, 1)}:1 instead of ${number(askedRatio, 1)}:1.`,
    loud: (fact) => `${The(fact.voice)} is ${number(fact.db)} dB too loud beside ${the(fact.lead)}.`,
    quiet: (fact) => `${The(fact.voice)} is ${number(fact.db)} dB too soft beside ${the(fact.lead)}.`,
    uneven: (fact) => `${The(fact.voice)} is uneven: its plain strokes differ by ±${number(fact.db)} dB.`,
    complete: ({ count }) => `All ${count} strokes are there, and no others.`,
    steady: (fact) =>
      `${The(fact.voice)} is steady: half of its strokes lie within ${ms(fact.ms)} of their place.`,
    holds: ({ bpm }) => `The tempo holds at ${number(bpm)}.`,
    balanced: () => 'The limbs are balanced as the lesson asks.',
  },
  unheard: {
    'not-heard': ({ voice }) =>
      `${The(voice)} was not heard at all: not played, or too soft for this microphone.`,
    'hard-to-tell': ({ voice }) =>
      `${The(voice)} is hard to tell from the other voices in this recording; its strokes are a guess.`,
    'from-loudspeaker': ({ voice, count }) =>
      `${count} ${count === 1 ? 'stroke' : 'strokes'} of ${the(voice)} cannot be told from what the loudspeaker played; with headphones they can.`,
    'as-other-exercises': ({ exercises }) =>
      `What is heard is as much exercise ${list(exercises)}: it cannot be told which was played.`,
    'other-tempo': ({ bpm, askedBpm }) =>
      `It was played at ${number(bpm)} beats a minute, not at ${number(askedBpm)}.`,
    'partly-recognised': () => 'Only part of the exercise was recognised; read the figures with care.',
  },
  report: {
    exercise: 'exercise',
    voice: 'voice',
    heard: 'heard',
    extra: 'extra',
    time: 'time',
    spread: 'spread',
    level: 'level',
    inTime: 'in time',
    early: 'early',
    late: 'late',
    balance: 'Balance',
    asked: 'asked',
    played: 'played',
    tempo: 'Tempo',
    summary: (bpm, start, swing) =>
      `${bpm} quarter notes a minute from ${start} s on${swing === null ? '' : `, swing ${swing}:1`}.`,
    heardOf: (hits, due) => `${hits} of ${due}`,
    displacement: (length) => `this far right is ${length} ms late`,
    missedMark: 'missing',
    extraMark: 'not written',
    moreBars: (count) => `and ${count} more bars`,
  },
};
