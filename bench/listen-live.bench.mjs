/**
 * How soon a live listener says a stroke, and how well what is drawn of a take agrees with the report on it: at once, and once
 * its bar is over. Takes of sixteen bars of one exercise of each demo lesson (`takes.mjs` says on which kit), and the same as
 * notes; nothing was set on them.
 *
 * Conventions: what the listener needs to hear, without the time that it computes, in blocks of 128 samples; shares in percent.
 * A stroke that is drawn as not sure counts as neither right nor wrong, and how many there are is a line of its own.
 */
import { isGuess, Seconds } from '@shedbook/core';
import { createLiveListener } from '@shedbook/listen';
import { quantile } from '@shedbook/signal';
import { askedOf, DEMO, playedTake, RATE } from './takes.mjs';

export const name = 'listen: live marks beside the report';

const BLOCK = 128;
const BARS = 16;
/** Lead-in of the takes. */
const START_SECONDS = 0.5;
/** A bar's sound is complete so long after its bar line. */
const SETTLED_SECONDS = 0.16;

/** @typedef {{ readonly voice: string, readonly bar: number, readonly beat: number, readonly slot: number }} Place */

/** @param {Place} place */
const nameOf = ({ voice, bar, beat, slot }) => [voice, bar, beat, slot].join(' ');

const noCounts = () => ({ drawn: 0, right: 0, heard: 0, told: 0, same: 0, unsure: 0, guessed: 0, places: 0 });

/** What a report says of its written strokes: heard or not, and whether it is sure. */
function saidBy(report) {
  /** @type {Map<string, { isHeard: boolean, isSure: boolean }>} */
  const said = new Map();
  const add = (place, isHeard) => said.set(nameOf(place), { isHeard, isSure: !isGuess(report, place.voice) });
  for (const { voice, written } of report?.strokes ?? []) if (written) add({ ...written, voice }, true);
  for (const place of report?.missed ?? []) add(place, false);
  return said;
}

/** The voices that the last bar's report could not tell, or did not hear at all. */
function unsureIn(report) {
  const unsure = (report?.unheard ?? []).filter(
    ({ reason }) => reason === 'hard-to-tell' || reason === 'not-heard',
  );
  return new Set(unsure.map(({ voice }) => voice));
}

/** Plays a take to a listener, and keeps what is drawn at once and what is said of each bar. */
class Page {
  /** @type {Set<string>} */
  drawn = new Set();
  /** @type {Map<string, { isHeard: boolean, isSure: boolean }>} */
  settled = new Map();
  unsure = new Set();
  bar = 0;

  constructor(listener, barSeconds) {
    this.listener = listener;
    this.barSeconds = barSeconds;
  }

  strokes(strokes) {
    for (const { voice, written, isSure } of strokes)
      if (written && isSure && !this.unsure.has(voice)) this.drawn.add(nameOf({ ...written, voice }));
  }

  time(seconds) {
    while (this.bar < BARS && seconds > START_SECONDS + (this.bar + 1) * this.barSeconds + SETTLED_SECONDS) {
      this.bar += 1;
      const { report } = this.listener.barReport(0, this.bar);
      for (const [place, said] of saidBy(report)) this.settled.set(place, said);
      this.unsure = unsureIn(report);
    }
  }
}

/** @param {Page} page @param {ReturnType<typeof noCounts>} counts */
function count(page, counts) {
  const whole = saidBy(page.listener.finish().report);
  for (const [place, { isHeard, isSure }] of whole) {
    const settled = page.settled.get(place);
    counts.places += 1;
    counts.unsure += settled?.isSure ? 0 : 1;
    counts.guessed += isSure ? 0 : 1;
    if (settled?.isSure) counts.told += 1;
    if (settled?.isSure && settled.isHeard === isHeard) counts.same += 1;
    if (isHeard) counts.heard += 1;
    if (page.drawn.has(place)) counts.drawn += 1;
    if (page.drawn.has(place) && isHeard) counts.right += 1;
  }
}

/** @param {ReturnType<typeof noCounts>} counts @param {number[]} delaysMs */
function hearSound(asked, how, counts, delaysMs) {
  const { samples } = playedTake(asked, how);
  const listener = createLiveListener(asked, { sampleRateHz: RATE });
  const page = begun(listener, asked);
  for (let at = 0; at < samples.length; at += BLOCK) {
    const strokes = listener.push(samples.subarray(at, at + BLOCK));
    for (const { timeSeconds } of strokes) delaysMs.push(1000 * ((at + BLOCK) / RATE - timeSeconds));
    page.strokes(strokes);
    page.time((at + BLOCK) / RATE);
  }
  count(page, counts);
}

function hearNotes(asked, how, counts) {
  const { strokes } = playedTake(asked, how);
  const listener = createLiveListener(asked);
  const page = begun(listener, asked);
  for (const { timeSeconds, voice, levelDb } of strokes) {
    page.time(timeSeconds);
    page.strokes([listener.note(timeSeconds, /** @type {never} */ (voice), /** @type {never} */ (levelDb))]);
  }
  page.time(Number.POSITIVE_INFINITY);
  count(page, counts);
}

function begun(listener, asked) {
  listener.startLoop(Seconds(START_SECONDS), asked.bpm);
  const bars = listener.bars;
  return new Page(listener, (bars[1]?.endSeconds ?? 0) - (bars[0]?.endSeconds ?? 0));
}

const SITUATIONS = [
  { what: 'dry', how: () => ({ room: false }) },
  { what: 'in a room', how: () => ({}) },
  { what: 'a limb left out', how: (limb) => ({ without: limb }) },
];

function rowsOf(what, { drawn, right, heard, told, same, unsure, guessed, places }) {
  const share = (part, whole) => ({ value: (100 * part) / Math.max(1, whole), unit: `% of ${whole}` });
  return [
    { what: `${what}: drawn at once as sure, and in the report`, ...share(right, drawn) },
    { what: `${what}: in the report, and drawn at once as sure`, ...share(right, heard) },
    { what: `${what}: said for sure of a bar that is over, as in the report`, ...share(same, told) },
    { what: `${what}: not sure once the bar is over`, ...share(unsure, places) },
    { what: `${what}: not sure in the report itself`, ...share(guessed, places) },
  ];
}

/** Rows of the table. */
export async function run() {
  /** @type {number[]} */
  const delaysMs = [];
  const tables = SITUATIONS.map(({ what, how }) => {
    const counts = noCounts();
    for (const { limb, ...demo } of DEMO)
      hearSound(askedOf({ ...demo, bars: BARS }), how(limb), counts, delaysMs);
    return rowsOf(what, counts);
  });
  const notes = noCounts();
  for (const { limb: _, ...demo } of DEMO) hearNotes(askedOf({ ...demo, bars: BARS }), {}, notes);
  return [
    { what: 'a stroke to its mark, in the middle', value: quantile(delaysMs, 0.5), unit: 'ms' },
    { what: 'a stroke to its mark, 95 % of them', value: quantile(delaysMs, 0.95), unit: 'ms' },
    ...tables.flat(),
    ...rowsOf('notes of a kit', notes),
  ];
}
