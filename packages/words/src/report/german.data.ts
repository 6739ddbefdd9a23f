/** What is said of a take, in German. */
import { countSyllable, type Subdivision, type Voice } from '@shedbook/core';
import type { HowOften, RemarkPlace } from '@shedbook/judge';
import { voices } from '../german/drum-set.ts';
import type { ReportCatalogue } from './catalogue.ts';

const number = (value: number, digits = 0): string =>
  value.toFixed(digits).replace('.', ',').replace('-', '−');
const ms = (value: number): string => `${number(value)} ms`;

const NAMED: Readonly<Record<Voice, string>> = {
  ride: 'Das Ride',
  hihat: 'Die Hi-Hat',
  'hihat-open': 'Die offene Hi-Hat',
  'hihat-foot': 'Der Hi-Hat-Fuß',
  bass: 'Die Bassdrum',
  snare: 'Die Snare',
  sidestick: 'Der Sidestick',
  rimshot: 'Der Rimshot',
  crash: 'Das Crash',
  'tom-high': 'Das hohe Tom',
  'tom-mid': 'Das mittlere Tom',
  'tom-low': 'Das tiefe Tom',
};

/** With "vor", "nach" and "neben": dative. */
const DATIVE: Readonly<Record<Voice, string>> = {
  ride: 'dem Ride',
  hihat: 'der Hi-Hat',
  'hihat-open': 'der offenen Hi-Hat',
  'hihat-foot': 'dem Hi-Hat-Fuß',
  bass: 'der Bassdrum',
  snare: 'der Snare',
  sidestick: 'dem Sidestick',
  rimshot: 'dem Rimshot',
  crash: 'dem Crash',
  'tom-high': 'dem hohen Tom',
  'tom-mid': 'dem mittleren Tom',
  'tom-low': 'dem tiefen Tom',
};

const list = (numbers: readonly number[]): string => numbers.join(', ').replace(/, (\d+)$/, ' oder $1');
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

/** The German catalogue. */
export const german: ReportCatalogue = {
  number,
  voices,
  place,
  sayings: {
    missing: (fact) => `${NAMED[fact.voice]} ${place(fact.place)} fehlt ${often(fact)}.`,
    'left-out': ({ voice, times, of }) =>
      times === of
        ? `${NAMED[voice]} wird gar nicht gespielt.`
        : `${NAMED[voice]} lässt ${times} von ${of} Schlägen aus.`,
    added: ({ voice, count }) => `${NAMED[voice]} hat ${count} Schläge, die nicht dastehen.`,
    early: (fact) =>
      `${NAMED[fact.voice]} ${place(fact.place)} kommt ${ms(fact.ms)} zu früh, ${often(fact)}.`,
    late: (fact) => `${NAMED[fact.voice]} ${place(fact.place)} kommt ${ms(fact.ms)} zu spät, ${often(fact)}.`,
    before: (fact) =>
      `${NAMED[fact.voice]} kommt ${ms(fact.ms)} vor ${DATIVE[fact.lead]}${fact.apart ? APART : ''}.`,
    after: (fact) =>
      `${NAMED[fact.voice]} kommt ${ms(fact.ms)} nach ${DATIVE[fact.lead]}${fact.apart ? APART : ''}.`,
    unsteady: (fact) =>
      `${NAMED[fact.voice]} ist unruhig: Die Schläge liegen ±${ms(fact.ms)} um ihren Platz.`,
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
  },
  unheard: {
    'not-heard': ({ voice }) =>
      `${NAMED[voice]} war nicht zu hören: nicht gespielt oder zu leise für dieses Mikrofon.`,
    'hard-to-tell': ({ voice }) =>
      `${NAMED[voice]} ist in dieser Aufnahme kaum von den anderen Stimmen zu unterscheiden; diese Schläge sind geraten.`,
    'from-loudspeaker': ({ voice, count }) =>
      `${NAMED[voice]}: ${count} ${count === 1 ? 'Schlag ist' : 'Schläge sind'} nicht von dem zu unterscheiden, was der Lautsprecher spielte; mit Kopfhörern geht es.`,
    'as-other-exercises': ({ exercises }) =>
      `Was zu hören ist, passt ebenso zu Übung ${list(exercises)}: Welche gespielt wurde, ist nicht zu sagen.`,
    'other-tempo': ({ bpm, askedBpm }) =>
      `Gespielt wurde mit ${number(bpm)} Vierteln in der Minute, nicht mit ${number(askedBpm)}.`,
    'partly-recognised': () => 'Nur ein Teil der Übung wurde erkannt; die Zahlen sind mit Vorsicht zu lesen.',
  },
  report: {
    exercise: 'Übung',
    voice: 'Stimme',
    heard: 'gehört',
    extra: 'zu viel',
    time: 'Zeit',
    spread: 'Streuung',
    level: 'Pegel',
    inTime: 'pünktlich',
    early: 'zu früh',
    late: 'zu spät',
    balance: 'Lautstärken',
    asked: 'verlangt',
    played: 'gespielt',
    tempo: 'Tempo',
    summary: (bpm, start, swing) =>
      `${bpm} Viertel in der Minute ab ${start} s${swing === null ? '' : `, Swing ${swing}:1`}.`,
    heardOf: (hits, due) => `${hits} von ${due}`,
    displacement: (length) => `so weit rechts ist ${length} ms zu spät`,
    missedMark: 'fehlt',
    extraMark: 'steht nicht da',
    moreBars: (count) => `und ${count} weitere Takte`,
  },
};
