/**
 * Recordings of exercises.
 *
 * Conventions: 48 kHz stereo; loudness in LUFS. Where layers or voices are left out, the recording keeps the gain
 * of the whole, so that what is left sounds as loud as it does in the whole.
 */

import type { Lesson, Performance } from '@shedbook/core';
import { dbToGain } from '@shedbook/signal';
import {
  addClicks,
  CEILING_DBTP,
  encodeFlac,
  encodeMp3,
  encodeOgg,
  encodeWav,
  type Kit,
  limitTruePeak,
  normaliseLoudness,
  render,
  type StereoAudio,
} from '@shedbook/sound';
import { loadKit } from '../adapters/kit.ts';
import type { Terminal } from '../terminal.ts';
import { fileNumber, type Outbox } from './outbox.ts';
import { performForSound } from './perform-exercise.ts';
import type { AudioFormat, BuildRequest } from './request.ts';

const SAMPLE_RATE_HZ = 48_000;

const ENCODERS: Readonly<Record<AudioFormat, (audio: StereoAudio) => Promise<Uint8Array> | Uint8Array>> = {
  wav: (audio) => encodeWav(audio, { format: 'int24' }),
  mp3: encodeMp3,
  ogg: encodeOgg,
  flac: (audio) => encodeFlac(audio, { bits: 24 }),
};

/** One recording to be made. */
interface Recording {
  readonly exercise: number;
  readonly layers: number;
  readonly name: string;
}

function amplify(audio: StereoAudio, gainDb: number): StereoAudio {
  const gain = dbToGain(gainDb);
  const { left, right, sampleRateHz } = audio;
  return { left: left.map((x) => x * gain), right: right.map((x) => x * gain), sampleRateHz };
}

function fileName(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
}

function recordingsOf(lesson: Lesson, request: BuildRequest): readonly Recording[] {
  return request.exercises.flatMap((exercise) =>
    request.layers.map((layers) => {
      const number = fileNumber(exercise, lesson.exercises.length);
      const stage =
        request.layers.length > 1 ? `-${layers}-${fileName(lesson.layers[layers - 1]?.name ?? '')}` : '';
      return { exercise, layers, name: `audio/${number}${stage}.${request.audio}` };
    }),
  );
}

/** Renders what plays; the gain is that of the whole. */
function record(lesson: Lesson, request: BuildRequest, kit: Kit, recording: Recording): StereoAudio {
  const { click } = request;
  const sound = (performance: Performance) =>
    render(click ? addClicks(performance, { meter: lesson.meter, ...click }) : performance, {
      kit,
      setUp: lesson.setUp,
      room: !request.dry,
      seed: recording.exercise,
    });
  const { exercise, layers } = recording;
  const all = lesson.layers.length;
  const whole = sound(performForSound(lesson, exercise, { ...request, mute: [] }, all));
  const normalised = normaliseLoudness(whole, request.loudnessLufs);
  if (layers === all && request.mute.length === 0) return normalised.audio;
  const part = sound(performForSound(lesson, exercise, request, layers));
  return limitTruePeak(amplify(part, normalised.gainDb), CEILING_DBTP);
}

/** Records the exercises that were asked for; does nothing where no sound is. */
export async function writeAudio(
  lesson: Lesson,
  request: BuildRequest,
  outbox: Outbox,
  terminal: Terminal,
): Promise<void> {
  if (request.audio === null) return;
  const kit = await loadKit(request.kit, SAMPLE_RATE_HZ);
  const recordings = recordingsOf(lesson, request);
  for (const [index, recording] of recordings.entries()) {
    terminal.progress(`Recording ${index + 1} of ${recordings.length} …`);
    const audio = record(lesson, request, kit, recording);
    await outbox.put(recording.name, 'audio', recording.exercise, await ENCODERS[request.audio](audio));
  }
}
