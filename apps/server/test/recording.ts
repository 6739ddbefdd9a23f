/** Takes of an exercise, as its model sounds. */
import { formNamed, type Lesson, Lufs, parseLesson } from '@shedbook/core';
import { makeRecording, planRecordings, RECORDING_RATE_HZ } from '@shedbook/pack';
import { keptKit } from '../../../internal/testing/kept-kit.mjs';

/** Exercise 1 of a lesson in its form "One", a WAV file. */
export async function recordingOf(text: string): Promise<Uint8Array<ArrayBuffer>> {
  const lesson = parseLesson(text, 'lesson').lesson as Lesson;
  const request = {
    ...({ format: 'wav', exercises: [1], layers: [9], mute: [], bpm: null, dry: true, click: null } as const),
    ...{ form: formNamed(lesson, 'One'), loudnessLufs: Lufs(-16) },
  };
  const [planned] = planRecordings(lesson, request);
  if (!planned) throw new Error('a recording');
  const kit = keptKit({ sampleRateHz: RECORDING_RATE_HZ });
  return new Uint8Array((await makeRecording(lesson, planned, request, kit)).content);
}
