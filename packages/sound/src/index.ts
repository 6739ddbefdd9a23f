export { encodeFlac, encodeMonoFlac, encodeMp3, encodeOgg, type FlacOptions } from './files/compressed.ts';
export { encodeWav, type WavFormat, type WavOptions } from './files/wav.ts';
export { createKit, type Kit, type KitOptions } from './kit/kit.ts';
export { LEVEL_WINDOW_SECONDS, PLAIN_STROKE_LUFS } from './kit/measured-sound.ts';
export { createSmallKit } from './kit/small-kit.ts';
export { RINGING_SOUNDS, SOUND_NAMES, type SoundName } from './kit/sound.ts';
export { amplify } from './loudness/amplify.ts';
export { limitTruePeak } from './loudness/limiter.ts';
export {
  integrateSteps,
  type Loudness,
  loudnessSteps,
  measureChannels,
  measureLoudness,
  type WeightedChannel,
} from './loudness/measure.ts';
export {
  CEILING_DBTP,
  type LimitedLoudness,
  type Normalised,
  normaliseLoudness,
  RECORDING_LUFS,
  seekGain,
} from './loudness/normalise.ts';
export { mostLoss, strokeSteps, tenthsOf } from './loudness/stroke-loss.ts';
export { truePeakOf } from './loudness/true-peak.ts';
export { addClicks, type ClickGap, type ClickOptions, clicksIn } from './play-along/click.ts';
export { type Renderable, type RenderOptions, render } from './render/render.ts';
export { type RenderLoopOptions, renderLoop } from './render/render-loop.ts';
export { createRenderer, type Renderer, type RendererOptions } from './render/renderer.ts';
export { type SoundingStroke, soundOf, soundsOfStroke } from './render/sound-of.ts';
export { SoundFontError, type SoundFontFact } from './soundfont/sound-font-fact.ts';
export {
  loadSoundFontKit,
  readSoundFont,
  type SoundFontKitOptions,
  type SoundFontSounds,
  soundFontKit,
} from './soundfont/soundfont-kit.ts';
export {
  addWords,
  countAloud,
  renderCounted,
  SPOKEN_LEAD_SECONDS,
  type SpokenWord,
  type SpokenWords,
  spokenAt,
} from './spoken/count-aloud.ts';
export {
  type CountedPlace,
  type CountWord,
  countWordOf,
  SPOKEN_FADE_SECONDS,
  SPOKEN_GAIN,
  SPOKEN_RATE_HZ,
  type SpokenLanguage,
  type SpokenPlace,
  spokenPlace,
} from './spoken/count-word.ts';
export type { StereoAudio } from './stereo.ts';
export { type SlowDown, slowDown } from './stretch/slow-down.ts';
