/** Signal: what listening, sound and judging share. Plain numbers in, plain numbers out; units are in the names. */
export {
  type Biquad,
  bandPass,
  filterInPlace,
  highPass,
  lowPass,
  powerResponse,
  RunningFilter,
} from './biquad.ts';
export { ComplexFft } from './complex-fft.ts';
export { easePerSample, fallPerSample, leftAfter } from './decay.ts';
export { dbToGain, dbToPower, gainToDb, powerToDb } from './decibels.ts';
export { PowerSpectrum } from './fft.ts';
export { joined } from './joined.ts';
export {
  createKFilter,
  type KFilter,
  kWeight,
  kWeighted,
  kWeighting,
  lufsToPower,
  powerToLufs,
} from './k-weighting.ts';
export { energyOf, meanSquare, peakOf, rootMeanSquare } from './level.ts';
export { sigmoid } from './logit.ts';
export { Resampler } from './resample.ts';
export {
  fitLine,
  lowerMedian,
  mean,
  median,
  medianDeviation,
  NORMAL_DEVIATION,
  nearestQuantile,
  quantile,
  spread,
} from './statistics.ts';
export { blackman, hann, kaiser, sinc } from './windows.ts';
