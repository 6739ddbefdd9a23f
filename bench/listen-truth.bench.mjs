/**
 * How right the ear is: takes of known truth in the situations that lessons bring, in one run.
 *
 * Conventions: F counts a stroke as right that one of the same voice was played within 50 ms of, each once; its baseline
 * takes every written stroke as played, at its place, and is given the place where the take begins. Shares in percent. Five
 * takes a line, of one exercise of each demo lesson (`takes.mjs` says on which kit); nothing was set on them.
 */
import { listen, listenBeside, PadListener } from '@shedbook/listen';
import {
  askedOf,
  DEMO,
  musicOf,
  pagePlays,
  playedTake,
  RATE,
  talkOf,
  throughRoom,
  withOther,
} from './takes.mjs';

export const name = 'listen: strokes of takes of known truth';

const WITHIN_SECONDS = 0.05;
const SURE = 0.9;
const SHARES = 10;

/** Counts of strokes: said and played, said only, played only. */
const noCounts = () => ({ right: 0, extra: 0, missed: 0 });

/**
 * @typedef {{ readonly voice: string, readonly timeSeconds: number, readonly confidence?: number }} Struck
 * @param {readonly Struck[]} said @param {readonly Struck[]} played @param {ReturnType<typeof noCounts>} counts
 * @param {(stroke: Struck, isRight: boolean) => void} [tell] told of each stroke that was said
 */
function count(said, played, counts, tell = () => undefined) {
  const used = new Set();
  for (const stroke of said) {
    const near = played
      .map(({ voice, timeSeconds }, i) => ({
        voice,
        i,
        distance: Math.abs(timeSeconds - stroke.timeSeconds),
      }))
      .filter(
        ({ voice, i, distance }) => voice === stroke.voice && !used.has(i) && distance <= WITHIN_SECONDS,
      );
    const nearest = near.toSorted((a, b) => a.distance - b.distance)[0];
    if (nearest) used.add(nearest.i);
    counts[nearest ? 'right' : 'extra'] += 1;
    tell(stroke, nearest !== undefined);
  }
  counts.missed += played.length - used.size;
}

const fMeasure = ({ right, extra, missed }) => (2 * right) / Math.max(1, 2 * right + extra + missed);

/** How many strokes were said with each tenth of confidence, and how many of them were played. */
const reliability = Array.from({ length: SHARES }, () => ({ said: 0, right: 0 }));

function weigh({ confidence = 0 }, isRight) {
  const share = reliability[Math.min(SHARES - 1, Math.floor(confidence * SHARES))];
  if (!share) return;
  share.said += 1;
  share.right += isRight ? 1 : 0;
}

const plain = (samples, asked) => listen(samples, RATE, asked);

function onPad(samples, asked) {
  const listener = new PadListener(RATE);
  listener.push(samples);
  return listener.finish(asked);
}

/** What the page plays, taken out of the take. */
const besidePage = (samples, asked) =>
  listenBeside({ samples, sampleRateHz: RATE }, { samples: pagePlays(asked), sampleRateHz: RATE }, asked);

const beatSeconds = ({ bpm }) => 60 / bpm;
const bleed = (underDb) => (samples, asked) => withOther(samples, throughRoom(pagePlays(asked)), underDb);

/** The lead hand's voice alone. */
const leadOf = ({ lesson }) => [lesson.lead];

/** Situations: how the take is asked for and played, what else sounds, and who listens. */
const SITUATIONS = [
  { what: 'dry', play: () => ({ room: false }) },
  { what: 'in a room', play: () => ({}) },
  { what: 'a limb left out', play: (_, limb) => ({ without: limb }) },
  ...[10, 20, 30].flatMap((db) => [
    {
      what: `a limb left out, the page ${db} dB under, unknown`,
      play: (_, limb) => ({ without: limb }),
      beside: bleed(db),
    },
    {
      what: `a limb left out, the page ${db} dB under, known`,
      play: (_, limb) => ({ without: limb }),
      beside: bleed(db),
      hear: besidePage,
    },
  ]),
  { what: 'the lead hand alone', play: (asked) => ({ only: leadOf(asked) }) },
  {
    what: 'music 15 dB under',
    beside: (samples, asked) => withOther(samples, musicOf(samples.length, beatSeconds(asked)), 15),
  },
  { what: 'talk 10 dB under', beside: (samples) => withOther(samples, talkOf(samples.length), 10) },
  { what: 'a pause of 3 s', play: () => ({ pauseSeconds: 3 }) },
  { what: 'on one surface', ask: { onPad: true }, hear: onPad },
  { what: 'at 60 quarter notes a minute', ask: { bpm: 60 } },
  { what: 'at 240 quarter notes a minute', ask: { bpm: 240 } },
];

/**
 * @typedef {ReturnType<typeof askedOf>} Asked
 * @typedef {object} Situation
 * @property {string} what
 * @property {{ bpm?: number, onPad?: boolean }} [ask]
 * @property {(asked: Asked, limb: string) => Parameters<typeof playedTake>[1]} [play]
 * @property {(samples: Float32Array, asked: Asked) => Float32Array} [beside]
 * @property {(samples: Float32Array, asked: Asked) => ReturnType<typeof listen>} [hear]
 * @param {Situation} situation
 */
function rowsOf({ what, ask = {}, play = () => ({}), beside = (samples) => samples, hear = plain }) {
  const [heard, score] = [noCounts(), noCounts()];
  let [refused, believed, silent] = [0, 0, 0];
  for (const { limb, ...demo } of DEMO) {
    const asked = askedOf({ ...demo, ...ask });
    const how = play(asked, limb) ?? {};
    const { strokes, written, samples } = playedTake(asked, how);
    const { report } = hear(beside(samples, asked), asked);
    if (!report) refused += 1;
    count(report?.strokes ?? [], strokes, heard, weigh);
    count(written, strokes, score);
    if (!how.without || !report) continue;
    const { hits = 0, missed = 0 } = report.voices[limb] ?? {};
    believed += hits;
    silent += hits + missed;
  }
  const baseline = fMeasure(score);
  const refusals =
    refused > 0 ? [{ what: `${what}: refused of ${DEMO.length}`, value: refused, unit: '' }] : [];
  const limbs =
    silent > 0
      ? [
          {
            what: `${what}: strokes of it believed`,
            value: (100 * believed) / silent,
            unit: `% of ${silent}`,
          },
        ]
      : [];
  return [
    {
      ...{ what: `${what}: strokes, F`, value: fMeasure(heard), unit: '' },
      ...{ ratio: fMeasure(heard) / baseline, ratioTo: `the written strokes' F of ${baseline.toFixed(3)}` },
    },
    ...refusals,
    ...limbs,
  ];
}

/** Takes that are asked about as another exercise of the lesson. */
function wrongExercise() {
  let told = 0;
  for (const { name: demo, exercise, other } of DEMO) {
    const asked = askedOf({ name: demo, exercise });
    const { samples } = playedTake(asked);
    const { report } = plain(samples, askedOf({ name: demo, exercise: other }));
    const others = report?.exercise;
    if (!report || others?.rather !== undefined) told += 1;
  }
  return [
    {
      what: 'another exercise of the lesson asked: refused, or told',
      value: (100 * told) / DEMO.length,
      unit: `% of ${DEMO.length}`,
    },
  ];
}

function reliabilityRows() {
  return reliability.flatMap(({ said, right }, i) =>
    said === 0
      ? []
      : [
          {
            what: `strokes said at ${(i / SHARES).toFixed(1)}${i / SHARES >= SURE ? ' and more' : ''}: played`,
            value: (100 * right) / said,
            unit: `% of ${said}`,
          },
        ],
  );
}

/** Rows of the table. */
export async function run() {
  const rows = SITUATIONS.flatMap(rowsOf);
  return [...rows, ...wrongExercise(), ...reliabilityRows()];
}
