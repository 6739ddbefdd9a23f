import { Hertz, Seconds, type Stroke, type Voice } from '@shedbook/core';
import { learnKit } from '@shedbook/listen';
import { expect, it } from 'vitest';
import { lessonOf, playLoop, SHORT_LESSON, soundOf } from '../../../../internal/testing/hearing.ts';
import { joined, lengthOf, soundSpan, soundsOf, turnAt, voicesToCheck } from './turns.ts';

const RATE = 44_100;
const SECTIONS = `${SHORT_LESSON}sections:
  - heading: Latin
    groove: {hihat: x x x x, bass: x . x .}
    exercises: [". x . ."]
`;

it('[ST8800] asks for each voice of every groove and exercise of the lesson once', () => {
  expect(voicesToCheck(lessonOf(SHORT_LESSON))).toEqual(['ride', 'hihat-foot', 'bass', 'snare']);
  expect(voicesToCheck(lessonOf(SECTIONS))).toEqual(['ride', 'hihat', 'hihat-foot', 'bass', 'snare']);
});

it('[ST8800] counts four before each voice and eight strokes of it, two a second, two seconds of rest between', () => {
  // definition: a line check as the command line asks for it, eight strokes of each and two seconds of rest
  expect(turnAt(-0.3, 2)).toEqual({ index: 0, isCount: true, beat: 1 });
  expect(turnAt(1.9, 2)).toEqual({ index: 0, isCount: true, beat: 4 });
  expect(turnAt(2.1, 2)).toEqual({ index: 0, isCount: false, beat: 1 });
  expect(turnAt(5.9, 2)).toEqual({ index: 0, isCount: false, beat: 8 });
  expect(turnAt(6.1, 2)).toEqual({ index: 1, isCount: true, beat: 1 });
  expect(turnAt(8.1, 2)).toEqual({ index: 1, isCount: false, beat: 1 });
  expect(turnAt(12.1, 2)).toBeNull();
  expect(lengthOf(2)).toBeGreaterThan(12);
});

const lesson = lessonOf(SHORT_LESSON);

/** What a microphone records of voices in their turns, strokes 80 ms late as people and devices are. */
function recorded(voices: readonly Voice[], silent: readonly Voice[] = []): Float32Array {
  const loop = playLoop(lesson, 1, 160, () => ({ lateMs: 0 }));
  const strokes = voices.flatMap((voice, turn) => {
    const { stroke } = loop.find((one) => one.stroke.voice === voice) as { readonly stroke: Stroke };
    return Array.from({ length: silent.includes(voice) ? 0 : 8 }, (_, i) => ({
      stroke,
      timeSeconds: 6 * turn + 2 + 0.5 * i + 0.08,
    }));
  });
  const { fromSeconds, toSeconds } = soundSpan(voices.length);
  const whole = soundOf([strokes], Seconds(toSeconds + 1));
  const lead = 0.2;
  return whole.slice(Math.round((lead + fromSeconds) * RATE), Math.round((lead + toSeconds) * RATE));
}

function learnt(sounds: ReadonlyMap<Voice, Float32Array>) {
  const { samples, limbs } = joined(sounds, RATE);
  return learnKit({ samples, sampleRateHz: Hertz(RATE) }, limbs);
}

it('[ST8801] names the voice that was not heard, and learns the kit once that alone was played again', () => {
  const voices: readonly Voice[] = ['bass', 'snare'];
  const first = soundsOf(recorded(voices, ['snare']), voices);
  expect(learnt(first)).toMatchObject({ unheard: ['snare'], slopes: {} });
  const again = new Map([...first, ...soundsOf(recorded(['snare']), ['snare'])]);
  const { unheard, slopes } = learnt(again);
  expect(unheard).toEqual([]);
  expect(Object.keys(slopes).length).toBeGreaterThan(0);
});
