import { readFile } from 'node:fs/promises';
import { Bpm, formShown, Hertz, perform } from '@shedbook/core';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { expect, it } from 'vitest';
import { lightKit } from '../../../../internal/testing/kept-kit.mjs';
import { swingLesson } from '../../../../internal/testing/played-notes.ts';
import { addClicks } from '../play-along/click.ts';
import { render } from '../render/render.ts';
import type { StereoAudio } from '../stereo.ts';
import { addWords, countAloud, renderCounted, SPOKEN_LEAD_SECONDS, spokenAt } from './count-aloud.ts';
import { countWordOf, SPOKEN_GAIN, SPOKEN_RATE_HZ, type SpokenLanguage, spokenPlace } from './count-word.ts';

const RATE = Hertz(44_100);

async function wordsIn(language: SpokenLanguage, file: string) {
  const decoder = new FLACDecoder();
  await decoder.ready;
  const bytes = await readFile(new URL(file, import.meta.url));
  const { channelData, sampleRate } = await decoder.decodeFile(new Uint8Array(bytes));
  // definition: what the places are counted in
  expect(sampleRate).toBe(SPOKEN_RATE_HZ);
  return spokenAt(language, [channelData[0] as Float32Array], RATE);
}

/** A swing exercise with triplet clicks. */
function clicked() {
  const lesson = swingLesson();
  const form = formShown(lesson, 1, null);
  const played = perform(lesson, { exercise: 1, form, bpm: Bpm(80), layers: 1 });
  return addClicks(played, { meter: lesson.meter, subdivision: 3 });
}

function empty(length: number): StereoAudio {
  return { left: new Float32Array(length), right: new Float32Array(length), sampleRateHz: RATE };
}

it.each([['en', 'english.flac'] as const, ['de', 'german.flac'] as const])(
  '[SO5400] a recording in %s says a word on every click, the count-in with them, felt on the click',
  async (language, file) => {
    const performance = clicked();
    const words = await wordsIn(language, file);
    const clicks = performance.strokes.filter(({ voice }) => voice === 'click');
    const said = countAloud(performance.strokes, words);
    expect(said).toHaveLength(clicks.length);
    // common practice: triplets are counted "1 trip let", a count-in on its beats alone
    expect(clicks.slice(0, 8).map(countWordOf)).toEqual(['1', '2', '3', '4', '1', 'trip', 'let', '2']);
    for (const [index, { from, samples }] of said.entries()) {
      const { timeSeconds } = clicks[index] as (typeof clicks)[number];
      const place = spokenPlace(language, countWordOf(clicks[index] as (typeof clicks)[number]) ?? '');
      if (!place) throw new Error('a word that was not recorded');
      // definition: the moment at which the word is felt is the click's, to the sample
      expect(Math.abs(from + place.feltSeconds * RATE - timeSeconds * RATE)).toBeLessThanOrEqual(1);
      expect(place.feltSeconds).toBeLessThan(SPOKEN_LEAD_SECONDS);
      const recorded = words.samples.subarray(Math.round(place.startSeconds * RATE));
      expect(samples[400]).toBeCloseTo(SPOKEN_GAIN * (recorded[400] as number), 6);
    }
  },
);

it('[SO5400] words add to what plays and fade under the next one, however the sound is cut, and the first is whole', async () => {
  const words = await wordsIn('en', 'english.flac');
  const performance = clicked();
  const options = { kit: lightKit({ sampleRateHz: RATE }), tail: 'cut' as const };
  const counted = renderCounted(performance, words, options);
  const lead = Math.round(SPOKEN_LEAD_SECONDS * RATE);
  const plain = render(performance, options);
  expect(counted.left.length).toBe(plain.left.length + lead);
  const said = countAloud(performance.strokes, words);
  const first = said[0]?.samples ?? new Float32Array(0);
  // definition: before the first click nothing sounds but the first word
  const start = lead + (said[0]?.from ?? 0);
  expect(counted.left[start + 900]).toBeCloseTo(first[900] as number, 6);
  const [whole, bits] = [empty(40_000), [empty(17_000), empty(23_000)] as const];
  addWords(whole, said, 20_000);
  addWords(bits[0], said, 20_000);
  addWords(bits[1], said, 37_000);
  expect([...bits[0].left, ...bits[1].left]).toEqual([...whole.left]);
  expect(whole.right).toEqual(whole.left);
  // definition: at 80 beats a minute "trip" has a quarter of a second before "let"; five time constants on it is under 1 %
  const [trip, after] = [said[5], said[6]];
  if (!trip || !after) throw new Error('no triplets');
  const gone = after.from - trip.from + Math.round(0.06 * RATE);
  const rest = trip.samples.subarray(gone);
  expect(Math.max(0, ...rest.map(Math.abs))).toBeLessThan(0.01 * Math.max(...trip.samples.map(Math.abs)));
});
