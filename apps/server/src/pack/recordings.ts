/**
 * Recordings for a pack: every exercise as a loop at the lesson's start tempo, to be heard anywhere.
 *
 * Conventions: 44.1 kHz stereo MP3; loudness in LUFS.
 */
import { defaultForm, type Lesson, perform } from '@shedbook/core';
import { createKit, encodeMp3, renderLoop } from '@shedbook/sound';
import type { Download } from './downloads.ts';
import { padded } from './file.ts';

const SAMPLE_RATE_HZ = 44_100;
const LOUDNESS_LUFS = -16;

/** Records every exercise; `report` is told how many are done. */
export async function recordExercises(
  lesson: Lesson,
  report: (done: number, of: number) => void,
): Promise<readonly Download[]> {
  const all = lesson.exercises.length;
  if (all === 0) return [];
  const kit = createKit({ sampleRateHz: SAMPLE_RATE_HZ });
  const form = defaultForm(lesson);
  const made: Download[] = [];
  for (const { number } of lesson.exercises) {
    report(made.length, all);
    const performance = perform(lesson, { exercise: number, form });
    const { setUp } = lesson;
    const fromSeconds = performance.countInSeconds;
    const options = { kit, setUp, seed: number, fromSeconds, loudnessLufs: LOUDNESS_LUFS };
    const content = await encodeMp3(renderLoop(performance, options));
    made.push({ path: `files/audio/${padded(number, all)}.mp3`, kind: 'audio', exercise: number, content });
  }
  return made;
}
