/**
 * One key of a SoundFont, played at one velocity, as mono sound.
 *
 * Conventions: generators are numbered and scaled as in the SoundFont 2.04 specification: timecents, centibels,
 * absolute cents; times run from the onset. A drum rings until its sample or its envelope ends: there is no
 * note-off.
 * Source: SoundFont Technical Specification 2.04, sections 8.1 (generators), 8.4.2 (default modulator from velocity
 * to filter cutoff, −2400 cents) and 9.1 (envelope: attack straight, decay straight in decibels).
 * Differs from the source: no low-frequency oscillators, no modulation envelope, no chorus and reverb sends; the
 * two sides of a stereo sample are averaged, since every instrument has one place in our picture.
 */
import { dbToGain, filterInPlace, lowPass } from '@shedbook/signal';
import { GeneratorTypes, type VoiceParameters } from 'spessasynth_core';
import { hermite } from '../synth/interpolate.ts';
import { SoundFontError } from './sound-font-fact.ts';

/** Longest ring, in seconds. */
const LONGEST_SECONDS = 6;
const SILENT_CB = 960;
/** Above this the filter is open. */
const OPEN_FILTER_CENTS = 13500;
const VELOCITY_TO_FILTER_CENTS = -2400;
const MIDDLE_KEY_CENTS = 100;

const timecents = (value: number) => 2 ** (value / 1200);
/** Frequency of absolute cents: 0 is 8.176 Hz. */
const absoluteCents = (value: number) => 8.176 * 2 ** (value / 1200);

type Reader = (name: keyof typeof GeneratorTypes) => number;

function reader(voice: VoiceParameters): Reader {
  return (name) => voice.generators[GeneratorTypes[name]] ?? 0;
}

/** Samples of the recording for each sample of sound. */
function speed(voice: VoiceParameters, of: Reader, key: number, rate: number): number {
  const { sample } = voice;
  const override = of('overridingRootKey');
  const root = override >= 0 ? override : sample.originalKey;
  const cents = (key - root) * (of('scaleTuning') || MIDDLE_KEY_CENTS) + sample.pitchCorrection;
  const tuned = cents + 100 * of('coarseTune') + of('fineTune');
  return (2 ** (tuned / 1200) * sample.sampleRate) / rate;
}

/** Gain of the volume envelope at a time, 0…1. */
function envelope(of: Reader): (seconds: number) => number {
  const delay = timecents(of('delayVolEnv'));
  const attack = timecents(of('attackVolEnv'));
  const hold = timecents(of('holdVolEnv'));
  const decay = timecents(of('decayVolEnv'));
  const sustainDb = Math.min(SILENT_CB, of('sustainVolEnv')) / 10;
  const started = delay > 0.01 ? delay : 0;
  return (seconds) => {
    const since = seconds - started;
    if (since < 0) return 0;
    if (since < attack && attack > 0.0011) return since / attack;
    const falling = since - attack - hold;
    // The decay time is that of a fall by 100 dB
    const fallDb = falling <= 0 ? 0 : Math.min(sustainDb, (100 * falling) / decay);
    return fallDb >= SILENT_CB / 10 ? 0 : dbToGain(-fallDb);
  };
}

/** What was recorded. @throws SoundFontError where it lies beside the file, or ends within a sample */
function recorded({ sample }: VoiceParameters): Float32Array {
  try {
    return sample.getAudioData();
  } catch {
    throw new SoundFontError({ fact: 'sound-font-damaged' });
  }
}

function addVoice(out: Float32Array, voice: VoiceParameters, key: number, rate: number): void {
  const of = reader(voice);
  const data = recorded(voice);
  const step = speed(voice, of, key, rate);
  const gain = envelope(of);
  const level = dbToGain(-of('initialAttenuation') / 10);
  const looped = of('sampleModes') % 2 === 1 && voice.sample.loopEnd > voice.sample.loopStart + 8;
  const { loopStart, loopEnd } = voice.sample;
  let at = of('startAddrsOffset');
  for (let i = 0; i < out.length; i += 1) {
    if (looped && at >= loopEnd) at -= loopEnd - loopStart;
    const before = Math.floor(at);
    if (before + 1 >= data.length) break;
    out[i] = (out[i] as number) + level * gain(i / rate) * hermite(data, before, at - before);
    at += step;
  }
}

/** Samples before the sound really begins, which many recordings have, are dropped. */
function fromOnset(samples: Float32Array): Float32Array {
  let peak = 0;
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
  const first = samples.findIndex((sample) => Math.abs(sample) > 0.01 * peak);
  return samples.subarray(Math.max(0, first));
}

/**
 * The sound of a key.
 * @throws SoundFontError where a recording of it is damaged
 * @param velocity 1 to 127; softer strokes pass a lower filter.
 */
export function playVoices(
  voices: readonly VoiceParameters[],
  note: { readonly key: number; readonly velocity: number },
  rate: number,
): Float32Array {
  const out = new Float32Array(LONGEST_SECONDS * rate);
  for (const voice of voices) addVoice(out, voice, note.key, rate);
  const cutoffs = voices.map((voice) => reader(voice)('initialFilterFc') || OPEN_FILTER_CENTS);
  const cents = Math.max(...cutoffs) + (VELOCITY_TO_FILTER_CENTS * (127 - note.velocity)) / 128;
  if (absoluteCents(cents) < 0.45 * rate)
    filterInPlace(out, lowPass(absoluteCents(cents), Math.SQRT1_2, rate));
  return fromOnset(out);
}
