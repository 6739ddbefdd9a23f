/** Remarks on a take, in English. */
import { countSyllable, type Subdivision, type Voice } from '@shedbook/core';
import type { HowOften, RemarkPlace } from '@shedbook/judge';
import { voices } from '../english/drum-set.ts';
import type { Sayings } from './remarks.ts';

const number = (value: number, digits = 0): string => value.toFixed(digits).replace('-', '−');
const ms = (value: number): string => `${number(value)} ms`;
const the = (voice: Voice): string => `the ${voices[voice]}`;
const The = (voice: Voice): string => `The ${voices[voice]}`;
const often = ({ times, of }: HowOften): string => (times === of ? 'every time' : `${times} of ${of} times`);

const TRIPLETS = ['', 'middle triplet', 'last triplet'];

function place({ beat, slot, slots, bar }: RemarkPlace): string {
  const syllable = countSyllable(beat - 1, slot - 1, slots as Subdivision);
  const name = slots === 3 ? TRIPLETS[slot - 1] : slots === 6 ? `${slot}th of six` : syllable;
  const counted = slot === 1 ? `${beat}` : `the ${name} of ${beat}`;
  return `on ${counted}${bar === null ? '' : ` in bar ${bar}`}`;
}

/** The sentences. */
export const english: Sayings = {
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
  slower: ({ bpm, askedBpm }) => `It is played at ${number(bpm)}, slower than the ${number(askedBpm)} asked.`,
  faster: ({ bpm, askedBpm }) => `It is played at ${number(bpm)}, faster than the ${number(askedBpm)} asked.`,
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
};
