/**
 * Recordings of exercises: as a build is asked for them, and as a pack carries them.
 *
 * Conventions: stereo; tempi in quarter notes a minute; loudness in LUFS; layers and exercises count from 1. Where
 * layers or voices are left out, a recording keeps the gain of the whole, so that what is left sounds as loud as it
 * does in the whole.
 */
import {
  type Bpm,
  type Form,
  formIn,
  formShown,
  Hertz,
  type Lesson,
  type Lufs,
  type Performance,
  perform,
  sectionOf,
  type Voice,
} from '@shedbook/core';
import {
  addClicks,
  amplify,
  CEILING_DBTP,
  type ClickOptions,
  createKit,
  encodeFlac,
  encodeMp3,
  encodeOgg,
  encodeWav,
  type Kit,
  limitTruePeak,
  normaliseLoudness,
  RECORDING_LUFS,
  render,
  renderCounted,
  renderLoop,
  type SpokenWords,
  type StereoAudio,
} from '@shedbook/sound';
import { fileNumber, type LessonFile } from './file.ts';

/** Samples a second of the recordings of a build; a kit for them has the same rate. */
export const RECORDING_RATE_HZ = Hertz(48_000);

/** Samples a second of the recordings of a pack: what every player has taken since the compact disc. */
const PACK_RATE_HZ = Hertz(44_100);

/** Audio formats. */
export const AUDIO_FORMATS = ['wav', 'mp3', 'ogg', 'flac'] as const;

/** An audio format. */
export type AudioFormat = (typeof AUDIO_FORMATS)[number];

const ENCODERS: Readonly<Record<AudioFormat, (audio: StereoAudio) => Promise<Uint8Array> | Uint8Array>> = {
  wav: (audio) => encodeWav(audio, { format: 'int24' }),
  mp3: encodeMp3,
  ogg: encodeOgg,
  flac: (audio) => encodeFlac(audio, { bits: 24 }),
};

/** What recordings are asked for. */
export interface RecordingRequest {
  readonly format: AudioFormat;
  /** Numbers of the exercises. */
  readonly exercises: readonly number[];
  /** How many layers play; several for a recording of each stage. */
  readonly layers: readonly number[];
  readonly mute: readonly Voice[];
  /** Null for the start tempo of each section. */
  readonly bpm: Bpm | null;
  /** Null for the one that plays when none is named. */
  readonly form: Form | null;
  readonly loudnessLufs: Lufs;
  /** Without room. */
  readonly dry: boolean;
  /** The click that plays along, or null. */
  readonly click: Omit<ClickOptions, 'meter'> | null;
  /** What is counted aloud on every click, the count-in with them; nothing where left out. */
  readonly words?: SpokenWords | null;
}

/** One recording to be made. */
export interface PlannedRecording {
  readonly path: string;
  readonly exercise: number;
  readonly layers: number;
}

function recordingPath(lesson: Lesson, exercise: number, format: AudioFormat, stage = ''): string {
  return `audio/${fileNumber(exercise, lesson.exercises.length)}${stage}.${format}`;
}

/** The recordings that are asked for, in the order in which they are made. */
export function planRecordings(
  lesson: Lesson,
  { exercises, layers, format }: Pick<RecordingRequest, 'exercises' | 'layers' | 'format'>,
): readonly PlannedRecording[] {
  return exercises.flatMap((exercise) => {
    const own = sectionOf(lesson, exercise).layers;
    // A section with fewer layers has all of them at its last.
    const counts = new Set(layers.map((count) => Math.min(count, own.length)));
    return [...counts].map((count) => {
      const joins = own[count - 1]?.joins ?? [];
      const stage = layers.length > 1 ? `-${[count, ...joins].join('-')}` : '';
      return { exercise, layers: count, path: recordingPath(lesson, exercise, format, stage) };
    });
  });
}

/** Renders what plays; the gain is that of the whole. */
function record(
  whole: Lesson,
  { exercise, layers }: PlannedRecording,
  request: RecordingRequest,
  kit: Kit,
): StereoAudio {
  const lesson = sectionOf(whole, exercise);
  const { click, mute, words } = request;
  const bpm = request.bpm ?? lesson.tempo.startBpm;
  const form = request.form ? formIn(lesson, request.form) : formShown(lesson, exercise, null);
  const sound = (plain: Performance) => {
    const performance = click ? addClicks(plain, { meter: lesson.meter, ...click }) : plain;
    const options = { kit, setUp: lesson.setUp, room: !request.dry, seed: exercise };
    return words ? renderCounted(performance, words, options) : render(performance, options);
  };
  const all = lesson.layers.length;
  const everything = sound(perform(lesson, { exercise, form, bpm, layers: all, mute: [] }));
  const normalised = normaliseLoudness(everything, request.loudnessLufs);
  if (layers === all && mute.length === 0) return normalised.audio;
  const part = sound(perform(lesson, { exercise, form, bpm, layers, mute }));
  return limitTruePeak(amplify(part, normalised.gainDb), CEILING_DBTP);
}

/** Makes one of the recordings; the kit's rate is {@link RECORDING_RATE_HZ}. */
export async function makeRecording(
  lesson: Lesson,
  planned: PlannedRecording,
  request: RecordingRequest,
  kit: Kit,
): Promise<LessonFile<'audio'>> {
  const content = await ENCODERS[request.format](record(lesson, planned, request, kit));
  return { path: planned.path, kind: 'audio', exercise: planned.exercise, content };
}

let packKit: Kit | null = null;

/** The kit that packs are recorded on, kept from one to the next: making it takes seconds of the processor. */
function keptPackKit(): Kit {
  packKit ??= createKit({ sampleRateHz: PACK_RATE_HZ });
  return packKit;
}

/**
 * Records every exercise for a pack: as a loop without a seam at the lesson's start tempo, in MP3, to be heard
 * anywhere. `report` is told how many are done.
 */
export async function recordLoops(
  lesson: Lesson,
  report: (done: number, of: number) => void,
): Promise<readonly LessonFile<'audio'>[]> {
  const all = lesson.exercises.length;
  if (all === 0) return [];
  const kit = keptPackKit();
  const made: LessonFile<'audio'>[] = [];
  for (const { number: exercise } of lesson.exercises) {
    report(made.length, all);
    const form = formShown(sectionOf(lesson, exercise), exercise, null);
    const performance = perform(lesson, { exercise, form });
    const { setUp } = lesson;
    const fromSeconds = performance.countInSeconds;
    const options = { kit, setUp, seed: exercise, fromSeconds, loudnessLufs: RECORDING_LUFS };
    const content = await ENCODERS.mp3(renderLoop(performance, options));
    made.push({ path: recordingPath(lesson, exercise, 'mp3'), kind: 'audio', exercise, content });
  }
  return made;
}
