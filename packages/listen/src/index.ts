/** Listening: what a student really played, from audio or MIDI. */
export { EventExtractor } from './detect/extract.ts';
export { isOfTheseWeights, type KnownKit, readKnownKit, voicesKnown } from './detect/known-kit.ts';
export type { AssumedFact, LineCheckFact, ListenFact, RefusalFact } from './fact.ts';
export { type LearntKit, type Limb, learnKit, learnKitInTurn } from './line-check/learn-kit.ts';
export { type HeardWith, listen, listenBeside, type Recording, TakeListener } from './listen.ts';
export type { Asked, Listened } from './listened.ts';
export { createLiveListener } from './live/live-listener.ts';
export type { LiveListener, LiveOptions, LivePlace, LiveStroke } from './live/live-stroke.ts';
export { startLoops } from './live/start-loops.ts';
export type { BesideStream } from './loudspeaker/beside-stream.ts';
export { LiveLoudspeaker } from './loudspeaker/live.ts';
export { matchOnsets, type OnsetScore, scoreOnsets } from './match/onsets.ts';
export { matchBeats, summariseSwing, swingRatios } from './measure/swing.ts';
export { listenToNotes } from './midi/listen-to-notes.ts';
export { type PlayedNote, strokesSent } from './midi/notes.ts';
export { HEARD_VOICES, type HeardVoice } from './network/heard-voices.data.ts';
export { StrokeNetwork } from './network/network.ts';
export { unpackWeights } from './network/weights.ts';
export { PadListener } from './pad/pad-listener.ts';
export { ANALYSIS_RATE } from './signal/bands.data.ts';
export { lessonOfTranscript } from './transcribe/lesson-text.ts';
export type { AssumedStroke, StruckVoice } from './transcribe/struck.ts';
export {
  type HeardBar,
  type Known,
  type Transcribed,
  type Transcript,
  transcribeNotes,
} from './transcribe/transcribe.ts';
