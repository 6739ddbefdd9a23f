/**
 * Prints how well takes are followed when their tempo changes, and when bars are played again or left out.
 *
 * Usage: node tempi.mjs FOLDER...   (folders made by takes.py; build the packages first)
 *
 * Every take is heard once; its events are then moved in time as if it had been played in another course of tempo,
 * with its truth, and its bars put together anew. `notes` are the same strokes as an electronic kit would send them.
 * A bar is followed when the report has the same strokes of the form in a bar that begins within a sixth of a beat of
 * it; a stroke is placed when it is reported within 50 ms, by its voice, at the place where it is written. TAKES=3
 * takes every third take, COURSE=drift the courses whose name begins so; VERBOSE=1 names takes that are not followed
 * well.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseLesson, perform, seededRandom } from '@shedbook/core';
import { ANALYSIS_RATE, EventExtractor, listenToNotes, StrokeNetwork, unpackWeights } from '@shedbook/listen';
import { formGrid, heardIn, reportOn } from '@shedbook/listen/lab';
import { Resampler } from '@shedbook/signal';
import { WEIGHTS } from './held-back.weights.mjs';
import { readWav } from './read-wav.mjs';

const network = new StrokeNetwork(unpackWeights(WEIGHTS));
const RATE = 44_100;
/** Share of a beat that a bar line may lie from where it is. */
const NEAR = 1 / 6;

function eventsOf(samples) {
  const resampler = new Resampler(RATE, ANALYSIS_RATE);
  const extractor = new EventExtractor(network, { live: false });
  return [samples, null].flatMap((block) => [
    ...extractor.push(block ? resampler.push(block) : resampler.flush()),
    ...(block ? [] : extractor.flush()),
  ]);
}

/** Up by a share over some bars, down again over as many, and so on. */
const zigzag = (share, bars) => (bar) => {
  const at = (bar / bars) % 2;
  return 1 + share * (at < 1 ? at : 2 - at);
};

function walk(spread) {
  return (seed) => {
    const random = seededRandom(`walk ${seed}`);
    const steps = [0];
    for (let i = 0; i < 200; i += 1) {
      const normal = Array.from({ length: 12 }, () => random.next()).reduce((a, b) => a + b, -6);
      steps.push(0.93 * steps.at(-1) + spread * normal);
    }
    return (bar) => {
      const from = Math.max(0, Math.floor(bar));
      return Math.exp(steps[from] + (bar - from) * (steps[from + 1] - steps[from]));
    };
  };
}

const fixed = (tempo) => () => tempo;
const line = (share, bars) => fixed((bar) => 1 + (share * Math.min(bars, Math.max(0, bar))) / bars);

/** Bars of the take in the order in which they are played: each played again or left out with some probability. */
const shuffled = (probability) => (count, seed) => {
  const random = seededRandom(`bars ${seed}`);
  return Array.from({ length: count }, (_, bar) => bar).flatMap((bar) => {
    const lot = random.next();
    return lot < probability ? [bar, bar] : lot < 2 * probability ? [] : [bar];
  });
};

/** Courses: relative tempo at each bar of the take, how many bars are left of it, and their order. */
const COURSES = {
  steady: { tempo: fixed(() => 1) },
  'drift +12 % in 8': { tempo: line(0.12, 8), bars: 8 },
  'drift −12 % in 8': { tempo: line(-0.12, 8), bars: 8 },
  'drift +20 % in 8': { tempo: line(0.2, 8), bars: 8 },
  'drift −20 % in 8': { tempo: line(-0.2, 8), bars: 8 },
  'drift +20 % in 16': { tempo: line(0.2, 16), bars: 16 },
  'drift −20 % in 16': { tempo: line(-0.2, 16), bars: 16 },
  'up and down 12 % in 8': { tempo: fixed(zigzag(0.12, 8)) },
  'up and down 20 % in 16': { tempo: fixed(zigzag(0.2, 16)) },
  'steps of 6 %': { tempo: fixed((bar) => [1, 1.06, 1, 0.94][Math.floor(bar / 5) % 4]) },
  'steps of 12 %': { tempo: fixed((bar) => [1, 1.12, 1, 0.88][Math.floor(bar / 7) % 4]) },
  'wandering 1.5 %': { tempo: walk(0.015) },
  'wandering 3 %': { tempo: walk(0.03) },
  'bars again, left out': { tempo: fixed(() => 1), order: shuffled(0.08) },
  'the same, wandering': { tempo: walk(0.015), order: shuffled(0.08) },
};

/** Seconds of the take to seconds of the course. */
function warp(beats, beatsInBar, tempo) {
  const moved = [beats[0]];
  for (let i = 1; i < beats.length; i += 1) {
    const parts = 8;
    let seconds = 0;
    for (let part = 0; part < parts; part += 1) {
      const bar = (i - 1 + (part + 0.5) / parts) / beatsInBar;
      seconds += (beats[i] - beats[i - 1]) / parts / tempo(bar);
    }
    moved.push(moved.at(-1) + seconds);
  }
  const rate = (i) => (moved[i + 1] - moved[i]) / (beats[i + 1] - beats[i]);
  return (t) => {
    if (t <= beats[0]) return moved[0] + t - beats[0];
    const last = beats.length - 1;
    if (t >= beats[last]) return moved[last] + (t - beats[last]) * rate(last - 1);
    let i = 0;
    while (beats[i + 1] <= t) i += 1;
    return moved[i] + (t - beats[i]) * rate(i);
  };
}

/** The take with its bars in another order: things with a time, and where beats lie then. */
function reorder(beats, beatsInBar, order) {
  const lead = 0.12 * (beats[1] - beats[0]);
  const pieces = [];
  let at = beats[0];
  for (const bar of order) {
    const [from, to] = [beats[bar * beatsInBar], beats[(bar + 1) * beatsInBar]];
    pieces.push({ from, to, by: at - from, bar });
    at += to - from;
  }
  const bars = Math.floor((beats.length - 1) / beatsInBar);
  const first = pieces[0];
  const last = pieces.at(-1);
  const move = (things, key) =>
    pieces.flatMap((piece) => {
      const from = piece === first && piece.bar === 0 ? Number.NEGATIVE_INFINITY : piece.from - lead;
      const to = piece === last && piece.bar === bars - 1 ? piece.to + 1 : piece.to - lead;
      return things
        .filter((thing) => thing[key] >= from && thing[key] < to)
        .map((thing) => ({ ...thing, [key]: thing[key] + piece.by }));
    });
  const moved = pieces.flatMap(({ bar, by }) =>
    beats.slice(bar * beatsInBar, (bar + 1) * beatsInBar).map((beat) => beat + by),
  );
  return { move, beats: [...moved, at] };
}

const sortBy = (key) => (a, b) => a[key] - b[key];

/** A take in a course. */
function bend(take, events, { tempo, bars, order }, seed) {
  const { beats, strokes } = take.truth;
  const per = take.beatsInBar;
  const count = Math.min(bars ?? Number.POSITIVE_INFINITY, Math.floor((beats.length - 1) / per));
  const plain = Array.from({ length: count }, (_, bar) => bar);
  const sequence = order ? order(count, seed) : plain;
  const again = reorder(beats, per, sequence);
  const to = warp(again.beats, per, tempo(seed));
  const formBarOf = new Map(strokes.filter((s) => s.written).map((s) => [s.written.loop, s.written.bar]));
  return {
    events: again
      .move(events, 'timeSeconds')
      .map((event) => ({ ...event, timeSeconds: to(event.timeSeconds) }))
      .toSorted(sortBy('timeSeconds')),
    strokes: again
      .move(strokes, 't')
      .map((stroke) => ({ ...stroke, t: to(stroke.t) }))
      .toSorted(sortBy('t')),
    lines: sequence.map((bar, i) => ({
      seconds: to(again.beats[i * per]),
      beatSeconds: (to(again.beats[(i + 1) * per]) - to(again.beats[i * per])) / per,
      formBar: formBarOf.get(bar) ?? null,
    })),
  };
}

/** What is written in each bar of the form, as a name for bars that are alike. */
function shapes({ lesson, form, bpm }) {
  const grid = formGrid(perform(lesson, { exercise: 1, form, bpm }), lesson.meter);
  const name = ({ strokes }) => strokes.map((s) => `${s.voice}${s.position.toFixed(4)}`).join();
  return new Map(grid.bars.map((bar) => [bar.bar, name(bar)]));
}

function tallyStrokes(strokes, truth, known, tally) {
  const used = new Set();
  const place = ({ voice, written }) =>
    written && `${voice} ${written.beat}.${written.slot} in ${known.get(written.bar)}`;
  for (const stroke of strokes) {
    const near = truth
      .map((t, i) => ({ i, distance: Math.abs(t.t - stroke.timeSeconds), voice: t.voice }))
      .filter(({ i, distance, voice }) => voice === stroke.voice && distance <= 0.05 && !used.has(i))
      .toSorted(sortBy('distance'))[0];
    if (near) {
      used.add(near.i);
      if (stroke.written && place(stroke) === place(truth[near.i])) tally.right += 1;
    } else tally.extra += 1;
  }
  tally.written += truth.filter(({ written }) => written).length;
  tally.hit += used.size;
  tally.missed += truth.length - used.size;
}

function tallyBars(report, lines, known, tally) {
  const placed = report.playedBars.map((bar, i) => ({ bar, seconds: report.tempo[i].timeSeconds }));
  const isFollowed = ({ seconds, beatSeconds, formBar }) =>
    placed.some(
      (one) =>
        Math.abs(one.seconds - seconds) < NEAR * beatSeconds && known.get(one.bar) === known.get(formBar),
    );
  const asked = lines.filter(({ formBar }) => formBar !== null);
  const followed = asked.filter(isFollowed).length;
  tally.bars += asked.length;
  tally.followed += followed;
  tally.placed += placed.filter(({ bar }) => bar !== null).length;
  return followed / asked.length;
}

function judge(listened, bent, known, tally) {
  if (!listened.report) {
    tally.refused += 1;
    tally.bars += bent.lines.length;
    tally.missed += bent.strokes.length;
    tally.written += bent.strokes.filter(({ written }) => written).length;
    return 0;
  }
  tallyStrokes(listened.report.strokes, bent.strokes, known, tally);
  return tallyBars(listened.report, bent.lines, known, tally);
}

const empty = () => ({
  ...{ bars: 0, followed: 0, placed: 0, refused: 0, ms: 0 },
  ...{ hit: 0, extra: 0, missed: 0, written: 0, right: 0 },
});

function show(name, source, tally) {
  const { bars, followed, placed, hit, extra, missed, written, right, refused, ms } = tally;
  const f = (2 * hit) / Math.max(1, 2 * hit + extra + missed);
  console.log(
    `  ${name.padEnd(24)} ${source.padEnd(6)} ${((100 * followed) / bars).toFixed(1).padStart(5)} % of ${bars} bars followed, ${placed} found  ${((100 * right) / written).toFixed(1).padStart(5)} % of strokes placed  F50 ${f.toFixed(3)}  ${refused} refused  ${Math.round(ms)} ms`,
  );
}

for (const folder of process.argv.slice(2)) {
  console.log(`\n${basename(folder)}`);
  const step = Number(process.env.TAKES ?? 1);
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  const takes = names
    .filter((_, i) => i % step === 0)
    .map((name) => {
      const take = JSON.parse(readFileSync(join(folder, name), 'utf8'));
      const { lesson } = parseLesson(take.lesson, name);
      const form = lesson.forms.find((one) => one.name === take.form);
      const asked = { lesson, exercise: 1, form, bpm: take.lessonBpm };
      const events = eventsOf(readWav(join(folder, name.replace('.json', '.wav'))));
      return { name, take, asked, events, known: shapes(asked) };
    });
  for (const [course, what] of Object.entries(COURSES)) {
    if (!course.startsWith(process.env.COURSE ?? '')) continue;
    const sources = { audio: empty(), notes: empty() };
    for (const { name, take, asked, events, known } of takes) {
      const bent = bend(take, events, what, name);
      const durationSeconds = bent.strokes.at(-1).t + 1;
      const listen = {
        audio: () =>
          reportOn(heardIn(bent.events, network), asked, { kind: 'audio', durationSeconds }, network),
        notes: () => {
          const notes = bent.strokes.map(({ t, voice, level }) => ({
            ...{ timeSeconds: t, voice, levelDb: level },
          }));
          return listenToNotes(notes, durationSeconds, asked);
        },
      };
      for (const [source, tally] of Object.entries(sources)) {
        const from = performance.now();
        const listened = listen[source]();
        tally.ms += performance.now() - from;
        const share = judge(listened, bent, known, tally);
        if (process.env.VERBOSE && share < 0.9)
          console.log(
            `    ${name} ${take.style} ${Math.round(take.bpm)} for ${take.lessonBpm}, ${source}: ${share.toFixed(2)} ${listened.refusal?.fact ?? ''}`,
          );
      }
    }
    for (const [source, tally] of Object.entries(sources)) show(course, source, tally);
  }
}
