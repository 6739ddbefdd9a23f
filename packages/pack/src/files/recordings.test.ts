import { Bpm, formNamed, type Lesson, parseLesson } from '@shedbook/core';
import { createKit, RECORDING_LUFS } from '@shedbook/sound';
import { expect, it } from 'vitest';
import { makeRecording, planRecordings, RECORDING_RATE_HZ } from './recordings.ts';

const TEXT = `title: Shown
tempo: 240
forms: {tune: {sections: [{pattern: 2}, {time: 1}], countIn: 1}}
exercises:
  - {pattern: x x x x, example: 3}
  - x . x .
`;

/** Seconds of a recording, from its header. */
function secondsOf(wav: Uint8Array): number {
  const view = new DataView(wav.buffer, wav.byteOffset);
  // standard: RIFF WAVE, `byte rate` at 28 and the size of the data in the chunk that `data` names
  const text = new TextDecoder('latin1').decode(wav.subarray(0, 200));
  return view.getUint32(text.indexOf('data') + 4, true) / view.getUint32(28, true);
}

it('[SE2900] an example is recorded several times round and then in its form, unless another form is asked for', async () => {
  const lesson = parseLesson(TEXT, 'shown').lesson as Lesson;
  const kit = createKit({ sampleRateHz: RECORDING_RATE_HZ });
  const record = async (exercise: number, form: string | null) => {
    const request = {
      ...{ format: 'wav' as const, exercises: [exercise], layers: [9], mute: [], bpm: Bpm(240) },
      ...{
        form: form === null ? null : formNamed(lesson, form),
        loudnessLufs: RECORDING_LUFS,
        dry: true,
        click: null,
      },
    };
    const [planned] = planRecordings(lesson, request);
    if (!planned) throw new Error('a recording');
    return secondsOf((await makeRecording(lesson, planned, request, kit)).content as Uint8Array);
  };
  const [shown, looped, plain] = [await record(1, null), await record(1, 'loop'), await record(2, null)];
  // definition: a bar lasts a second; 3 and then 2 and 1 are six, the loop has four; what rings on is alike
  expect(shown - looped).toBeCloseTo(2, 1);
  expect(plain).toBeCloseTo(looped, 1);
});
