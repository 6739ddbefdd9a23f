/**
 * How soon a live listener says a stroke, and how well what is drawn of a take agrees with the report on it: at once, once its
 * bar is over, and once its round is. Takes of two rounds of eight bars of one exercise of each demo lesson (`takes.mjs` says on
 * which kit), and the same as notes; nothing was set on them.
 *
 * Conventions: what the listener needs to hear, without the time that it computes, in blocks of 128 samples; shares in percent.
 * Of every place something is drawn in the end: heard, missed, or hard to tell. Over all places the same is to be drawn as in
 * the report on the whole; where only what is said for sure is counted, a line says so, and how much is not sure has its own.
 */
import { isGuess, Seconds } from '@shedbook/core';
import { createLiveListener } from '@shedbook/listen';
import { quantile } from '@shedbook/signal';
import { askedOf, DEMO, playedTake, RATE } from './takes.mjs';

export const name = 'listen: live marks beside the report';

const BLOCK = 128;
const ROUNDS = 2;
const BARS = 8;
/** Lead-in of the takes. */
const START_SECONDS = 0.5;
/** A bar's sound is complete so long after its bar line. */
const SETTLED_SECONDS = 0.16;

/** @typedef {{ readonly voice: string, readonly bar: number, readonly beat: number, readonly slot: number }} Place */
/** @typedef {'heard' | 'missed' | 'hard to tell'} Mark */

/** The name of a place, its bar counted through the rounds. @param {Place} place @param {number} round from 0 */
const nameOf = ({ voice, bar, beat, slot }, round = 0) => [voice, round * BARS + bar, beat, slot].join(' ');

const noCounts = () => ({
  ...{ drawn: 0, right: 0, heard: 0, told: 0, same: 0, unsure: 0, guessed: 0, places: 0 },
  ...{ afterBar: 0, afterRound: 0, sure: 0, asPlayed: 0 },
});

/** What a report says of each written stroke. @returns {Map<string, Mark>} */
function saidBy(report, round = 0) {
  /** @type {Map<string, Mark>} */
  const said = new Map();
  const add = (place, mark) =>
    said.set(nameOf(place, round), isGuess(report, place.voice) ? 'hard to tell' : mark);
  for (const { voice, written } of report?.strokes ?? []) if (written) add({ ...written, voice }, 'heard');
  for (const place of report?.missed ?? []) add(place, 'missed');
  for (const place of [...(report?.unknown ?? []), ...(report?.covered ?? [])]) add(place, 'hard to tell');
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
  /** @type {Map<string, Mark>} What is drawn once the bar of a place is over, and once its round is. */
  afterBar = new Map();
  /** @type {Map<string, Mark>} */
  afterRound = new Map();
  unsure = new Set();
  bar = 0;

  constructor(listener, barSeconds) {
    this.listener = listener;
    this.barSeconds = barSeconds;
  }

  strokes(strokes) {
    for (const { voice, written, isSure } of strokes)
      if (written && isSure && !this.unsure.has(voice))
        this.drawn.add(nameOf({ ...written, voice }, written.loop));
  }

  time(seconds) {
    const isOver = (bar) => seconds > START_SECONDS + (bar + 1) * this.barSeconds + SETTLED_SECONDS;
    for (; this.bar < ROUNDS * BARS && isOver(this.bar); this.bar += 1) {
      const round = Math.floor(this.bar / BARS);
      const isLast = (this.bar + 1) % BARS === 0;
      const { report } = isLast
        ? this.listener.loopReport(round)
        : this.listener.reportUpTo(round, (this.bar % BARS) + 1);
      const said = saidBy(report, round);
      for (const [place, mark] of said) if (!this.afterBar.has(place)) this.afterBar.set(place, mark);
      if (isLast) for (const [place, mark] of said) this.afterRound.set(place, mark);
      this.unsure = unsureIn(report);
    }
  }
}

/** @param {Page} page @param {ReadonlySet<string>} played @param {ReturnType<typeof noCounts>} counts */
function count(page, played, counts) {
  for (const [place, mark] of saidBy(page.listener.finish().report)) {
    const settled = page.afterBar.get(place) ?? 'hard to tell';
    const inTheEnd = page.afterRound.get(place) ?? 'hard to tell';
    counts.places += 1;
    counts.unsure += settled === 'hard to tell' ? 1 : 0;
    counts.guessed += mark === 'hard to tell' ? 1 : 0;
    counts.afterBar += settled === mark ? 1 : 0;
    counts.afterRound += inTheEnd === mark ? 1 : 0;
    const isSure = settled !== 'hard to tell' && mark !== 'hard to tell';
    if (isSure) counts.told += 1;
    if (isSure && settled === mark) counts.same += 1;
    if (inTheEnd !== 'hard to tell') counts.sure += 1;
    if (inTheEnd === (played.has(place) ? 'heard' : 'missed')) counts.asPlayed += 1;
    if (mark === 'heard') counts.heard += 1;
    if (page.drawn.has(place)) counts.drawn += 1;
    if (page.drawn.has(place) && mark === 'heard') counts.right += 1;
  }
}

/** The places that were played. */
const placesOf = (strokes) => new Set(strokes.map(({ voice, written }) => nameOf({ ...written, voice })));

/** @param {ReturnType<typeof noCounts>} counts @param {number[]} delaysMs */
function hearSound(demo, how, counts, delaysMs) {
  const { samples, strokes: played } = playedTake(askedOf({ ...demo, bars: ROUNDS * BARS }), how);
  const asked = askedOf({ ...demo, bars: BARS });
  const listener = createLiveListener(asked, { sampleRateHz: RATE });
  const page = begun(listener, asked);
  for (let at = 0; at < samples.length; at += BLOCK) {
    const strokes = listener.push(samples.subarray(at, at + BLOCK));
    for (const { timeSeconds } of strokes) delaysMs.push(1000 * ((at + BLOCK) / RATE - timeSeconds));
    page.strokes(strokes);
    page.time((at + BLOCK) / RATE);
  }
  count(page, placesOf(played), counts);
}

function hearNotes(demo, counts) {
  const { strokes } = playedTake(askedOf({ ...demo, bars: ROUNDS * BARS }));
  const asked = askedOf({ ...demo, bars: BARS });
  const listener = createLiveListener(asked);
  const page = begun(listener, asked);
  for (const { timeSeconds, voice, levelDb } of strokes) {
    page.time(timeSeconds);
    page.strokes([listener.note(timeSeconds, /** @type {never} */ (voice), /** @type {never} */ (levelDb))]);
  }
  page.time(Number.POSITIVE_INFINITY);
  count(page, placesOf(strokes), counts);
}

/** A page for a listener whose rounds are announced. */
function begun(listener, asked) {
  listener.startLoop(Seconds(START_SECONDS), asked.bpm);
  const bars = listener.bars;
  const barSeconds = (bars[1]?.endSeconds ?? 0) - (bars[0]?.endSeconds ?? 0);
  for (let round = 1; round < ROUNDS; round += 1)
    listener.startLoop(Seconds(START_SECONDS + round * BARS * barSeconds), asked.bpm);
  return new Page(listener, barSeconds);
}

const SITUATIONS = [
  { what: 'dry', how: () => ({ room: false }) },
  { what: 'in a room', how: () => ({}) },
  { what: 'a limb left out', how: (limb) => ({ without: limb }) },
  { what: 'strokes left out here and there', how: () => ({ leftOut: 0.04 }) },
];

function rowsOf(what, counts) {
  const { drawn, right, heard, told, same, unsure, guessed, places, afterBar, afterRound, sure, asPlayed } =
    counts;
  const share = (part, whole) => ({ value: (100 * part) / Math.max(1, whole), unit: `% of ${whole}` });
  return [
    { what: `${what}: every place, drawn as in the report once its bar is over`, ...share(afterBar, places) },
    {
      what: `${what}: every place, drawn as in the report once its round is over`,
      ...share(afterRound, places),
    },
    {
      what: `${what}: drawn for sure once its round is over, and so it was played`,
      ...share(asPlayed, sure),
    },
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
    for (const { limb, ...demo } of DEMO) hearSound(demo, how(limb), counts, delaysMs);
    return rowsOf(what, counts);
  });
  const notes = noCounts();
  for (const { limb: _, ...demo } of DEMO) hearNotes(demo, notes);
  return [
    { what: 'a stroke to its mark, in the middle', value: quantile(delaysMs, 0.5), unit: 'ms' },
    { what: 'a stroke to its mark, 95 % of them', value: quantile(delaysMs, 0.95), unit: 'ms' },
    ...tables.flat(),
    ...rowsOf('notes of a kit', notes),
  ];
}
