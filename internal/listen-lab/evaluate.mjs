/**
 * Prints how well listening does on rendered takes, beside two baselines.
 *
 * Usage: node evaluate.mjs FOLDER...   (folders made by takes.py; build the packages first)
 *
 * The network is the one that learnt the training split alone; SHIPPED=1 takes the shipped one, which learnt dev's kits
 * too, though not test's, and NETWORK=FILE one that `pack-weights.py` packed into that file.
 *
 * F is counted over all voices of a set: a reported stroke is right when one of the truth, of the same voice, lies
 * within the window. Baselines: `score`, every written stroke taken as played at its place in the take; `blind`,
 * every written stroke with any onset within 50 ms taken as played at that onset. Each take is asked about twice
 * more: as another exercise over the same groove (`other`), and as one over another groove (`groove`): refused is
 * right, and where there is a report its strokes are compared with what was played. Voices that were written and
 * never played are counted too (`silent`).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { ontoPad, parseLesson } from '@shedbook/core';
import { PadListener, StrokeNetwork, TakeListener, unpackWeights } from '@shedbook/listen';
import { quantile as quantileOf } from '@shedbook/signal';
import { WEIGHTS } from './held-back.weights.mjs';
import { readWav } from './read-wav.mjs';

const packed = (file) => /'([A-Za-z0-9+/=]+)'/.exec(readFileSync(file, 'utf8'))[1];
const network = process.env.SHIPPED
  ? undefined
  : new StrokeNetwork(unpackWeights(process.env.NETWORK ? packed(process.env.NETWORK) : WEIGHTS));

/** A listener that has heard all of a take; each `finish` of it says how the take is as what is asked. */
function heard(samples, take) {
  const listener = isOnPad(take) ? new PadListener(44_100) : new TakeListener(44_100, { network });
  for (let at = 0; at < samples.length; at += 65_536) listener.push(samples.subarray(at, at + 65_536));
  return listener;
}

const isOnPad = ({ situation }) => situation === 'pad';

/** What a take is asked about: an exercise of a lesson, on a pad where it was played on one. */
function askedOf(take, { lesson: text, form: name, lessonBpm: bpm }) {
  const { lesson } = parseLesson(text, 'take.lesson.yaml');
  const asked = { lesson, exercise: 1, form: lesson.forms.find((one) => one.name === name), bpm };
  return isOnPad(take) ? ontoPad(asked) : asked;
}

/** A quantile of what was measured; none where nothing was. */
function quantile(values, q) {
  const told = values.filter(Number.isFinite);
  return told.length === 0 ? Number.NaN : quantileOf(told, q);
}

const median = (values) => quantile(values, 0.5);

/** Matches one voice's strokes: counts and errors within 50 and 25 ms. */
function compare(got, truth, tally, voice) {
  tally[voice] ??= { hit: 0, near: 0, extra: 0, missed: 0, errors: [] };
  const one = tally[voice];
  const used = new Set();
  for (const stroke of got) {
    let best = -1;
    truth.forEach((t, i) => {
      const distance = Math.abs(t.t - stroke.timeSeconds);
      if (used.has(i) || distance > 0.05) return;
      if (best < 0 || distance < Math.abs(truth[best].t - stroke.timeSeconds)) best = i;
    });
    if (best < 0) {
      one.extra += 1;
      continue;
    }
    used.add(best);
    const error = 1000 * (stroke.timeSeconds - truth[best].t);
    one.hit += 1;
    if (Math.abs(error) <= 25) one.near += 1;
    one.errors.push(error);
  }
  one.missed += truth.length - used.size;
}

const f = (hit, extra, missed) => (2 * hit) / Math.max(1, 2 * hit + extra + missed);
const fixed = (value, digits = 3) => (Number.isFinite(value) ? value.toFixed(digits) : '–');

function total(tally, key) {
  const all = Object.values(tally);
  const sum = (name) => all.reduce((a, one) => a + one[name], 0);
  const right = sum(key);
  const wrong = sum('hit') - right;
  return f(right, sum('extra') + wrong, sum('missed') + wrong);
}

function compareAll(strokes, truth, tally) {
  const voices = new Set([...strokes, ...truth].map((stroke) => stroke.voice));
  for (const voice of voices) {
    const of = (list) => list.filter((stroke) => stroke.voice === voice);
    compare(of(strokes), of(truth), tally, voice);
  }
}

/** Tenths of confidence that strokes are counted by. */
const SHARES = 10;

/** How many strokes were said with a confidence, and how many of them were played. */
function weighConfidence(strokes, truth, reliability) {
  const used = new Set();
  for (const { voice, timeSeconds, confidence } of strokes) {
    const at = truth.findIndex(
      (t, i) => !used.has(i) && t.voice === voice && Math.abs(t.t - timeSeconds) <= 0.05,
    );
    if (at >= 0) used.add(at);
    const bin = reliability[Math.min(SHARES - 1, Math.floor(confidence * SHARES))];
    bin.said += 1;
    bin.right += at >= 0 ? 1 : 0;
    bin.confidence += confidence;
  }
}

/** Every written stroke of the report's bars, as the baselines see it. */
function baselines(report, tallyScore, tallyBlind, truth) {
  const written = [
    ...report.strokes
      .filter((s) => s.written)
      .map((s) => ({ voice: s.voice, timeSeconds: s.timeSeconds - s.offsetMs / 1000 })),
    ...report.missedAt,
  ];
  const onsets = report.strokes.map((s) => s.timeSeconds);
  compareAll(written, truth, tallyScore);
  const blind = written.flatMap((w) => {
    const near = onsets.filter((o) => Math.abs(o - w.timeSeconds) < 0.05);
    if (near.length === 0) return [];
    return [
      {
        ...w,
        timeSeconds: near.reduce((a, b) =>
          Math.abs(b - w.timeSeconds) < Math.abs(a - w.timeSeconds) ? b : a,
        ),
      },
    ];
  });
  compareAll(blind, truth, tallyBlind);
}

function truthSwing(take) {
  const lead = take.truth.strokes.filter((s) => s.voice === take.lead).map((s) => s.t);
  const ratios = [];
  const { beats } = take.truth;
  for (let i = 0; i + 1 < beats.length; i += 1) {
    const at = (beat) => lead.find((t) => Math.abs(t - beat) < (beats[1] - beats[0]) / 8);
    const [a, b] = [at(beats[i]), at(beats[i + 1])];
    if (a === undefined || b === undefined) continue;
    const inside = lead.filter((t) => t >= a && t <= b);
    if (inside.length === 3) ratios.push((inside[1] - a) / (b - inside[1]));
  }
  return ratios.length > 4 ? median(ratios) : null;
}

function balanceErrors(take, report) {
  const level = (voice) => median(take.truth.strokes.filter((s) => s.voice === voice).map((s) => s.level));
  const lead = level(take.lead);
  return Object.entries(report.balanceDb).flatMap(([voice, db]) => {
    const count = take.truth.strokes.filter((s) => s.voice === voice).length;
    return voice === take.lead || count < 6 ? [] : [{ voice, error: db - (level(voice) - lead) }];
  });
}

/** The next take of the list that is unlike this one in the wanted way. */
function another(takes, index, unlike) {
  const order = [...takes.slice(index + 1), ...takes.slice(0, index)];
  return order.find((take) => unlike(take, takes[index]));
}

const sameGroove = (a, b) =>
  a.style === b.style && a.lesson.split('exercises')[1] !== b.lesson.split('exercises')[1];
const otherGroove = (a, b) => a.lead !== b.lead || a.beatsInBar !== b.beatsInBar;

for (const folder of process.argv.slice(2)) {
  const tally = {};
  const scored = {};
  const blind = {};
  const rows = { swing: [], bpm: [], balance: [], offset: [], refused: 0, feathered: {} };
  const balanceBy = {};
  const wrong = { other: { asked: 0, refused: 0, tally: {} }, groove: { asked: 0, refused: 0, tally: {} } };
  const reliability = Array.from({ length: SHARES }, () => ({ said: 0, right: 0, confidence: 0 }));
  const silent = { written: 0, believed: 0, voices: 0 };
  let cpu = 0;
  let seconds = 0;
  const takes = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')));
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
    const take = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    const asked = askedOf(take, take);
    const { lesson } = asked;
    const samples = readWav(join(folder, file.replace('.json', '.wav')));
    const before = process.cpuUsage();
    const listener = heard(samples, take);
    const { report, refusal } = listener.finish(asked);
    const used = process.cpuUsage(before);
    cpu += (used.user + used.system) / 1e6;
    seconds += samples.length / 44100;
    const index = takes.findIndex((one) => one.index === take.index);
    for (const [key, unlike] of [
      ['other', sameGroove],
      ['groove', otherGroove],
    ]) {
      const instead = another(takes, index, unlike);
      if (!instead) continue;
      const answer = listener.finish(askedOf(take, instead));
      wrong[key].asked += 1;
      if (!answer.report) wrong[key].refused += 1;
      else compareAll(answer.report.strokes, take.truth.strokes, wrong[key].tally);
      if (process.env.VERBOSE)
        console.log(
          key,
          file,
          take.style,
          'as',
          instead.index,
          answer.report
            ? `confidence ${fixed(answer.report.alignment.confidence, 2)} ${Object.entries(
                answer.report.voices,
              )
                .map(([v, o]) => `${v} ${o.hits} of ${o.hits + o.missed}, ${o.extra} extra`)
                .join('; ')}`
            : answer.refusal.fact,
        );
    }
    if (!report) {
      rows.refused += 1;
      if (process.env.VERBOSE) console.log(file, take.style, refusal.fact);
      compareAll([], take.truth.strokes, tally);
      continue;
    }
    const own = {};
    const played = new Set(take.truth.strokes.map((stroke) => stroke.voice));
    for (const voice of new Set(take.truth.missed.map((stroke) => stroke.voice))) {
      if (played.has(voice)) continue;
      const { hits = 0, missed = 0 } = report.voices[voice] ?? {};
      silent.voices += 1;
      silent.believed += hits;
      silent.written += hits + missed;
    }
    compareAll(report.strokes, take.truth.strokes, tally);
    compareAll(report.strokes, take.truth.strokes, own);
    weighConfidence(report.strokes, take.truth.strokes, reliability);
    if (process.env.VERBOSE) {
      const bad = Object.entries(own).filter(([, o]) => f(o.hit, o.extra, o.missed) < 0.93);
      console.log(
        file,
        take.style,
        take.kit,
        fixed(total(own, 'hit')),
        'conf',
        fixed(report.alignment.confidence, 2),
        bad.map(([v, o]) => `${v} +${o.hit} extra ${o.extra} missed ${o.missed}`).join('; '),
        'bpm',
        fixed(report.alignment.bpm - take.truth.bpm, 2),
        (report.unheard ?? []).map(({ reason, voice }) => `${reason} ${voice ?? ''}`).join(', '),
      );
    }
    const missedAt = take.truth.missed.filter((m) => m.t).map((m) => ({ voice: m.voice, timeSeconds: m.t }));
    baselines({ ...report, missedAt }, scored, blind, take.truth.strokes);
    const swing = truthSwing(take);
    if (swing && report.swingRatio) rows.swing.push(Math.abs(report.swingRatio.median - swing));
    rows.bpm.push(Math.abs(report.alignment.bpm - take.truth.bpm));
    for (const { voice, error } of balanceErrors(take, report)) {
      rows.balance.push(Math.abs(error));
      balanceBy[voice] ??= [];
      balanceBy[voice].push(error);
    }
    const softest = lesson.balance.bass <= -10;
    if (softest && own.bass) {
      rows.feathered.bass ??= { hit: 0, near: 0, extra: 0, missed: 0, errors: [] };
      const sum = rows.feathered.bass;
      for (const key of ['hit', 'near', 'extra', 'missed']) sum[key] += own.bass[key];
    }
    for (const [voice, { offsetMs }] of Object.entries(report.voices)) {
      const truth = take.truth.strokes
        .filter((s) => s.voice === voice && s.ideal)
        .map((s) => 1000 * (s.t - s.ideal));
      if (truth.length >= 6) rows.offset.push(Math.abs(offsetMs.median - median(truth)));
    }
  }
  console.log(
    `\n${basename(folder)}: ${Math.round(seconds)} s of takes, ${rows.refused} refused, ${fixed((60 * cpu) / seconds, 2)} s of processor time for 60 s`,
  );
  for (const [voice, one] of Object.entries(tally)) {
    const errors = one.errors.map(Math.abs);
    console.log(
      `  ${voice.padEnd(11)} strokes ${String(one.hit + one.missed).padStart(5)}  F50 ${fixed(f(one.hit, one.extra, one.missed))}  F25 ${fixed(f(one.near, one.extra + one.hit - one.near, one.missed + one.hit - one.near))}  extra ${one.extra} missed ${one.missed}  bias ${fixed(median(one.errors), 1)} ms, |error| ${fixed(median(errors), 1)}, 95 % ${fixed(quantile(errors, 0.95), 1)}  balance ${fixed(median(balanceBy[voice] ?? []), 1)} dB`,
    );
  }
  const errors = Object.values(tally).flatMap((one) => one.errors.map(Math.abs));
  console.log(
    `  all voices  F50 ${fixed(total(tally, 'hit'))}  F25 ${fixed(total(tally, 'near'))}  feathered bass F50 ${fixed(total(rows.feathered, 'hit'))}  |error| ${fixed(median(errors), 2)} ms, 95 % ${fixed(quantile(errors, 0.95), 1)} ms`,
  );
  console.log(
    `  baselines   score F50 ${fixed(total(scored, 'hit'))}  blind F50 ${fixed(total(blind, 'hit'))}`,
  );
  console.log(
    `  take        swing ${fixed(median(rows.swing), 3)} (90 % ${fixed(quantile(rows.swing, 0.9), 3)})  tempo ${fixed(median(rows.bpm), 2)} bpm (90 % ${fixed(quantile(rows.bpm, 0.9), 2)})  balance ${fixed(median(rows.balance), 1)} dB (90 % ${fixed(quantile(rows.balance, 0.9), 1)})  offsets ${fixed(median(rows.offset), 1)} ms (90 % ${fixed(quantile(rows.offset, 0.9), 1)})`,
  );
  for (const [key, { asked, refused, tally: of }] of Object.entries(wrong)) {
    console.log(
      `  ${key.padEnd(11)} ${refused} of ${asked} refused; where not, F50 ${fixed(total(of, 'hit'))} of what was played`,
    );
  }
  const told = reliability.filter(({ said }) => said > 0);
  console.log(
    `  confidence  ${told.map(({ said, right, confidence }) => `${fixed(confidence / said, 2)}: ${fixed(right / said, 2)} of ${said}`).join(', ')}`,
  );
  console.log(
    `  silent      ${silent.voices} voices, ${silent.believed} of ${silent.written} written strokes believed`,
  );
}
