/** Remarks on a take, in German. */
import { countSyllable, type Subdivision, type Voice } from '@shedbook/core';
import type { HowOften, RemarkPlace } from '@shedbook/judge';
import { theVoices } from '../german/drum-set.ts';
import { capital } from '../message/capital.ts';
import type { Sayings } from './remarks.ts';

const number = (value: number, digits = 0): string =>
  value.toFixed(digits).replace('.', ',').replace('-', '−');
const ms = (value: number): string => `${number(value)} ms`;

const NAMED = Object.fromEntries(
  Object.entries(theVoices.nominative).map(([voice, name]) => [voice, capital(name)]),
) as Readonly<Record<Voice, string>>;

const DATIVE = theVoices.dative;

const often = ({ times, of }: HowOften): string => (times === of ? 'jedes Mal' : `${times} von ${of} Mal`);

const TRIPLETS = ['', 'mittleren Triole', 'letzten Triole'];

function place({ beat, slot, slots, bar }: RemarkPlace): string {
  const syllable = countSyllable(beat - 1, slot - 1, slots as Subdivision).replace('&', 'und');
  const name =
    slots === 3 ? `der ${TRIPLETS[slot - 1]}` : slots === 6 ? `der ${slot}. Sextole` : `dem „${syllable}“`;
  const counted = slot === 1 ? `der ${beat}` : `${name} der ${beat}`;
  return `auf ${counted}${bar === null ? '' : ` in Takt ${bar}`}`;
}

const APART = ': Man hört zwei Schläge statt einem';

/** The sentences. */
export const german: Sayings = {
  missing: (fact) => `${NAMED[fact.voice]} ${place(fact.place)} fehlt ${often(fact)}.`,
  'left-out': ({ voice, times, of }) =>
    times === of
      ? `${NAMED[voice]} wird gar nicht gespielt.`
      : `${NAMED[voice]} lässt ${times} von ${of} Schlägen aus.`,
  added: ({ voice, count }) => `${NAMED[voice]} hat ${count} Schläge, die nicht dastehen.`,
  early: (fact) => `${NAMED[fact.voice]} ${place(fact.place)} kommt ${ms(fact.ms)} zu früh, ${often(fact)}.`,
  late: (fact) => `${NAMED[fact.voice]} ${place(fact.place)} kommt ${ms(fact.ms)} zu spät, ${often(fact)}.`,
  before: (fact) =>
    `${NAMED[fact.voice]} kommt ${ms(fact.ms)} vor ${DATIVE[fact.lead]}${fact.apart ? APART : ''}.`,
  after: (fact) =>
    `${NAMED[fact.voice]} kommt ${ms(fact.ms)} nach ${DATIVE[fact.lead]}${fact.apart ? APART : ''}.`,
  unsteady: (fact) => `${NAMED[fact.voice]} ist unruhig: Die Schläge liegen ±${ms(fact.ms)} um ihren Platz.`,
  slows: ({ fromBpm, toBpm }) => `Es wird langsamer, von ${number(fromBpm)} auf ${number(toBpm)}.`,
  hurries: ({ fromBpm, toBpm }) => `Es eilt, von ${number(fromBpm)} auf ${number(toBpm)}.`,
  wanders: ({ percent }) => `Das Tempo ändert sich von Takt zu Takt um ${number(percent, 1)} %.`,
  slower: ({ bpm, askedBpm }) =>
    `Gespielt ist es mit ${number(bpm)}, langsamer als die verlangten ${number(askedBpm)}.`,
  faster: ({ bpm, askedBpm }) =>
    `Gespielt ist es mit ${number(bpm)}, schneller als die verlangten ${number(askedBpm)}.`,
  'flat-swing': ({ ratio, askedRatio }) =>
    `Der Swing ist zu gerade: ${number(ratio, 1)}:1 statt ${number(askedRatio, 1)}:1.`,
  'sharp-swing': ({ ratio, askedRatio }) =>
    `Der Swing ist zu scharf: ${number(ratio, 1)}:1 statt ${number(askedRatio, 1)}:1.`,
  loud: (fact) => `${NAMED[fact.voice]} ist neben ${DATIVE[fact.lead]} ${number(fact.db)} dB zu laut.`,
  quiet: (fact) => `${NAMED[fact.voice]} ist neben ${DATIVE[fact.lead]} ${number(fact.db)} dB zu leise.`,
  uneven: (fact) =>
    `${NAMED[fact.voice]} ist ungleich: Die einfachen Schläge weichen um ±${number(fact.db)} dB ab.`,
  complete: ({ count }) => `Alle ${count} Schläge sind da, und keiner zu viel.`,
  steady: (fact) =>
    `${NAMED[fact.voice]} ist ruhig: Die Hälfte der Schläge liegt bis ${ms(fact.ms)} um ihren Platz.`,
  holds: ({ bpm }) => `Das Tempo hält sich bei ${number(bpm)}.`,
  balanced: () => 'Die Lautstärken stimmen, wie die Lektion sie will.',
};
