import { expect, it } from 'vitest';
import {
  Bpm,
  FullScaleDb,
  Hertz,
  LeadDb,
  Lufs,
  Milliseconds,
  millisecondsToSeconds,
  type Quarters,
  Samples,
  Seconds,
  samplesToSeconds,
  secondsToMilliseconds,
  secondsToSamples,
  TakeDb,
  Ticks,
} from './units.ts';

it('[UN1] a unit goes where a number goes, and no bare number goes where a unit is asked for', () => {
  const number: number = Seconds(1.5);
  // @ts-expect-error a bare number says no unit
  const bare: Seconds = 1.5;
  // @ts-expect-error a sum is a bare number again
  const sum: Seconds = Seconds(1) + Seconds(0.5);
  expect([number, bare, sum]).toEqual([1.5, 1.5, 1.5]);
});

it('[UN1] no unit goes where another is asked for', () => {
  // @ts-expect-error time that people read is no time that is reckoned with
  const seconds: Seconds = Milliseconds(20);
  // @ts-expect-error a sample rate is no number of samples
  const samples: Samples = Hertz(44_100);
  // @ts-expect-error ticks are not quarter notes
  const quarters: Quarters = Ticks(480);
  // @ts-expect-error a tempo is no frequency
  const rate: Hertz = Bpm(120);
  expect([seconds, samples, quarters, rate]).toEqual([20, 44_100, 480, 120]);
});

it('[UN2] a level of a take, one relative to the lead voice, one of full scale and a loudness are four things', () => {
  // @ts-expect-error how loud a microphone was says nothing of the balance
  const asked: LeadDb = TakeDb(-42);
  // @ts-expect-error a balance is no level of full scale
  const peak: FullScaleDb = LeadDb(-6);
  // @ts-expect-error a peak is no loudness
  const loudness: Lufs = FullScaleDb(-6);
  // @ts-expect-error a loudness is no balance
  const balance: LeadDb = Lufs(-23);
  expect([asked, peak, loudness, balance]).toEqual([-42, -6, -6, -23]);
});

it('[UN3] conversions give what their definitions give', () => {
  // definition: a second has 1000 milliseconds, and as many samples as the rate says
  expect(secondsToMilliseconds(Seconds(0.25))).toBe(250);
  expect(millisecondsToSeconds(Milliseconds(250))).toBe(0.25);
  expect(secondsToSamples(Seconds(0.5), Hertz(44_100))).toBe(22_050);
  expect(samplesToSeconds(Samples(22_050), Hertz(44_100))).toBe(0.5);
});
