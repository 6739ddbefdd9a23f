import { Bpm, type Form, Hertz, perform, Seconds, type Stroke, type Voice } from '@shedbook/core';
import { expect, it } from 'vitest';
import { keptKit } from '../../../../internal/testing/kept-kit.mjs';
import { handsOf, RATE, sounded, swingOf } from '../../test/takes.ts';
import { isOfTheseWeights, type KnownKit, readKnownKit, voicesKnown } from '../detect/known-kit.ts';
import { listen } from '../listen.ts';
import { createLiveListener } from '../live/live-listener.ts';
import { learnKit, learnKitInTurn } from './learn-kit.ts';
import { fitSlope, lossOf } from './logistic.ts';

/** A kit unlike all that training met: everything sounds as if tape ran 1.4 times as fast. */
const FASTER = 1.4;
const HEARD_RATE = Hertz(Math.round(RATE * FASTER));
const KIT = { kit: keptKit({ sampleRateHz: RATE, seed: 'sd1' }) };
const ASKED_BPM = 100;

const LESSON = swingOf(['x.. ..x x.x ..x'], { more: 'balance: {bass: -8}\n' });
const FORM: Form = {
  name: 'eight',
  sections: [{ play: 'pattern', bars: 8, ending: null }],
  repeat: 1,
  countInBars: 0,
};
const asked = { lesson: LESSON, exercise: 1, form: FORM, bpm: Bpm(ASKED_BPM) };
const performance = perform(LESSON, { exercise: 1, form: FORM, bpm: Bpm(ASKED_BPM / FASTER) });

function take(without?: Voice): Float32Array {
  const strokes = performance.strokes.filter(({ voice }) => voice !== without);
  const hands = { seed: 'take', lateSeconds: 0.5, spreadSeconds: 0.016 };
  return sounded(handsOf(strokes, hands), performance.durationSeconds + 1, KIT);
}

const LIMBS: readonly Voice[] = ['hihat-foot', 'bass', 'snare', 'ride'];
const STROKES = 8;

/** Each limb by itself, eight strokes, two a second as they are heard, and a rest. */
function lineCheck(): Float32Array {
  const strokes = LIMBS.flatMap((voice, limb) => {
    const like = performance.strokes.find((one) => one.voice === voice) as Stroke;
    const first = 0.5 + limb * (STROKES * 0.5 + 1.5);
    return Array.from({ length: STROKES }, (_, i) => ({
      ...like,
      timeSeconds: Seconds(FASTER * (first + 0.5 * i)),
    }));
  });
  const hands = { seed: 'check', lateSeconds: 0, spreadSeconds: 0.016 };
  return sounded(handsOf(strokes, hands), strokes.at(-1)!.timeSeconds + 1, KIT);
}

const recording = { samples: lineCheck(), sampleRateHz: HEARD_RATE };
const learnt = learnKitInTurn(recording, LIMBS);
const kit: KnownKit = { name: 'Cellar', weights: learnt?.weights ?? '', slopes: learnt?.slopes ?? {} };

/** Of each voice the strokes that were heard where they are written, and elsewhere. */
function heardIn(samples: Float32Array, heard: { readonly kit?: KnownKit } = {}) {
  const { report } = listen(samples, HEARD_RATE, asked, heard);
  const voices = Object.entries(report?.voices ?? {});
  const counts = voices.map(([voice, { hits, extra }]) => [voice, { hits, extra }] as const);
  return { lineCheck: report?.lineCheck, voices: Object.fromEntries(counts) };
}

const written = (voice: Voice) => performance.strokes.filter((stroke) => stroke.voice === voice).length;
const full = take();
const before = heardIn(full);

it('[LI8300] voices that this kit hides are heard whole once each limb has played alone, and none is invented', () => {
  expect(learnt?.unheard).toEqual([]);
  expect(voicesKnown(kit)).toEqual(expect.arrayContaining(['bass', 'hihat-foot']));
  expect(before.voices).toMatchObject({ bass: { hits: 0 }, 'hihat-foot': { hits: 0 } });
  const { lineCheck, voices } = heardIn(full, { kit });
  expect(lineCheck).toBe('Cellar');
  // truth: what was rendered
  for (const voice of ['bass', 'hihat-foot', 'ride'] as const)
    expect(voices[voice]).toEqual({ hits: written(voice), extra: 0 });
  expect(voices.snare?.hits).toBeGreaterThanOrEqual(0.95 * written('snare'));
  expect(Object.values(voices).every(({ extra }) => extra === 0)).toBe(true);
});

it('[LI8301] a limb that stays out is not believed for having played in the line check', () => {
  const { voices } = heardIn(take('hihat-foot'), { kit });
  expect(voices['hihat-foot']).toEqual({ hits: 0, extra: 0 });
  expect(voices.bass).toEqual({ hits: written('bass'), extra: 0 });
});

it('[LI8302] what was learnt with other weights is not used, and no report says that it was', () => {
  expect(isOfTheseWeights(kit)).toBe(true);
  expect(heardIn(full, { kit: { ...kit, weights: '00000000' } })).toEqual(before);
});

it('[LI8303] a kit comes back from JSON as it was, and nothing else comes back as one', () => {
  expect(readKnownKit(JSON.parse(JSON.stringify(kit)))).toEqual(kit);
  const [voice, slopes] = Object.entries(kit.slopes)[0]!;
  const broken = { patient: slopes.patient.slice(1), quick: slopes.quick };
  for (const none of [
    null,
    [],
    { ...kit, name: 3 },
    { ...kit, slopes: { ...kit.slopes, [voice]: broken } },
    { ...kit, slopes: { anvil: slopes } },
    { ...kit, slopes: { ...kit.slopes, [voice]: { ...slopes, quick: slopes.quick.map(() => Number.NaN) } } },
  ])
    expect(readKnownKit(none)).toBeNull();
});

it('[LI8304] a limb of which too few strokes are heard is named, and limbs that run on are not told apart', () => {
  const limbs = LIMBS.map((voice, i) => ({ voice, fromSeconds: 5.5 * i, toSeconds: 5.5 * i + 5 }));
  const late = { voice: 'sidestick', fromSeconds: 40, toSeconds: 45 } as const;
  expect(learnKit(recording, [...limbs.slice(0, 1), late]).unheard).toEqual(['sidestick']);
  expect(learnKitInTurn(recording, [...LIMBS, 'crash', 'sidestick'])).toBeNull();
});

it('[LI8305] live, strokes and reports are heard with the line check as well', () => {
  const listener = createLiveListener(asked, { sampleRateHz: HEARD_RATE, kit });
  listener.startLoop(Seconds(0.5 / FASTER), Bpm(ASKED_BPM));
  const strokes = listener.push(full);
  // truth: what was rendered
  expect(strokes.filter(({ voice }) => voice === 'bass').length).toBeGreaterThan(0.9 * written('bass'));
  const { report } = listener.finish();
  expect(report).toMatchObject({ lineCheck: 'Cellar', voices: { bass: { hits: written('bass') } } });
});

it('[LI8306] what is learnt is the likeliest: the share of a kind, and the evidence that was known comes off', () => {
  const rows = (before: number) => ({
    width: 1,
    facts: new Float64Array(10).fill(1),
    before: new Float64Array(10).fill(before),
    isThere: Uint8Array.from({ length: 10 }, (_, i) => Number(i < 8)),
  });
  const ridge = 1e-9;
  // definition: the likeliest logit of 8 in 10 is the logarithm of 8 to 2
  expect(fitSlope(rows(0), ridge)[0]).toBeCloseTo(Math.log(4), 5);
  expect(fitSlope(rows(2), ridge)[0]).toBeCloseTo(Math.log(4) - 2, 5);
  // definition: without evidence either kind has half a chance
  expect(lossOf(rows(0), new Float64Array(1))).toBeCloseTo(10 * Math.log(2), 12);
});
