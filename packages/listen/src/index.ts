/** Listening: what a student really played, from audio or MIDI. */
export { EventExtractor } from './detect/extract.ts';
export { type Asked, type Listened, listen, type Refusal, TakeListener } from './listen.ts';
export { createLiveListener } from './live/live-listener.ts';
export type { LiveListener, LiveOptions, LivePlace, LiveStroke } from './live/live-stroke.ts';
export { startLoops } from './live/start-loops.ts';
export { matchOnsets, type OnsetScore, scoreOnsets } from './match/onsets.ts';
export { matchBeats, summariseSwing, swingRatios } from './measure/swing.ts';
export { listenToNotes } from './midi/listen-to-notes.ts';
export type { PlayedNote } from './midi/notes.ts';
export { HEARD_VOICES, type HeardVoice, StrokeNetwork } from './network/network.ts';
export { unpackWeights } from './network/weights.ts';
export { LEVEL_LIMITS, LISTENER_LEVELS, type ListenerLevel } from './perception/limits.data.ts';
export { drawReport, type PictureOptions } from './picture/picture.ts';
export { isPraise, type Remark, type RemarkFact, type RemarkPlace } from './remarks/remark.ts';
export { remarksOn } from './remarks/remarks.ts';
export { type SayOptions, sayRemark, teacherSentences } from './remarks/say.ts';
export { unheardSentences } from './remarks/unheard.ts';
export { REPORT_LANGUAGES, type ReportLanguage, type Words, wordsOf } from './remarks/words.ts';
export type {
  AskedOf,
  Evenness,
  FullReport,
  PlaceFinding,
  TempoPoint,
  Unheard,
} from './report/take-report.ts';
export { ANALYSIS_RATE } from './signal/bands.data.ts';
