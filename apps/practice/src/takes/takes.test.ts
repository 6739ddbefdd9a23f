import { Bpm, perform } from '@shedbook/core';
import { judge } from '@shedbook/judge';
import { listenToNotes } from '@shedbook/listen';
import { matchingGain, modelStrokes, playedStrokes } from '@shedbook/stand/takes';
import { type LanguageTag, loadPractice } from '@shedbook/words';
import { strFromU8, unzipSync } from 'fflate';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { formOnce, HEARING_LESSON, lessonOf } from '../../../../internal/testing/hearing.ts';
import { notesSent } from '../../../../internal/testing/played-notes.ts';
import { Pcm } from '../ear/pcm.ts';
import { PracticeContext } from '../page/words.tsx';
import { asRecorded, fileNameOf, packTake } from './export-take.ts';
import type { Take } from './take.ts';
import { TakeReportView } from './take-report-view.tsx';

const lesson = lessonOf(HEARING_LESSON);

const take: Take = {
  id: 'x',
  startedAt: '2026-11-25T18:30:05+01:00',
  lesson: 'first-swing',
  lessonTitle: 'Första swing: läxa 1',
  exercise: 'snare x.. ..x x.x ...',
  number: 1,
  form: 'loop',
  layers: 9,
  kind: 'midi',
  durationSeconds: 8,
  latencySeconds: 0.05,
  loops: [
    { startSeconds: 2, endSeconds: 5, bpm: Bpm(160) },
    { startSeconds: 5, endSeconds: 7.5, bpm: Bpm(192) },
  ],
  verdicts: [],
  report: null,
  refusal: null,
  audioBytes: 0,
};

describe('a recording', () => {
  it('[ST83] is a WAV file of its samples', async () => {
    const pcm = new Pcm(44_100);
    pcm.push(Float32Array.from([0, 0.5, -1]));
    pcm.push(Float32Array.from([2]));
    const view = new DataView(await pcm.toWav().arrayBuffer());
    const text = (at: number) => String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
    // standard: RIFF WAVE (1991): chunk names, format 1, one channel, 16 bits, sizes in bytes
    expect([text(0), text(8), text(12), text(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
    expect(view.getUint32(4, true)).toBe(view.byteLength - 8);
    expect([view.getUint16(20, true), view.getUint16(22, true), view.getUint16(34, true)]).toEqual([
      1, 1, 16,
    ]);
    expect([view.getUint32(24, true), view.getUint32(28, true)]).toEqual([44_100, 88_200]);
    expect(view.getUint32(40, true)).toBe(8);
    // definition: full scale is 32767; what is louder is held there
    expect([0, 1, 2, 3].map((i) => view.getInt16(44 + 2 * i, true))).toEqual([0, 16_384, -32_767, 32_767]);
  });
});

describe('the model of a take', () => {
  it('[ST84] lies in step with it, loop by loop, at the tempo of each', () => {
    const strokes = modelStrokes(lesson, formOnce(lesson), take);
    const snare = strokes.filter((each) => each.voice === 'snare').map((each) => each.timeSeconds);
    // definition: x.. ..x x.x at triplets: 0, 5/3, 2, 8/3 beats, bars of four beats, two bars a loop
    const beats = [0, 5 / 3, 2, 8 / 3, 4, 4 + 5 / 3, 6, 4 + 8 / 3];
    const expected = [
      ...beats.map((beat) => 2 + (beat * 60) / 160),
      ...beats.map((beat) => 5 + (beat * 60) / 192),
    ];
    expect(snare).toHaveLength(expected.length);
    snare.forEach((time, i) => {
      expect(time).toBeCloseTo(expected[i] as number, 6);
    });
  });

  it('[ST84] what a kit played sounds when it was struck, its latency taken off', () => {
    const stroke = {
      voice: 'ride',
      timeSeconds: 2.05,
      levelDb: -3,
      written: null,
      offsetMs: null,
      confidence: 1,
    } as const;
    const report = { strokes: [stroke] } as unknown as Take['report'];
    expect(playedStrokes({ report, latencySeconds: 0.05 })).toEqual([
      expect.objectContaining({ voice: 'ride', timeSeconds: expect.closeTo(2, 9), levelDb: -3 }),
    ]);
  });
});

describe('the level of a take', () => {
  it('[ST84] is brought to that of its model, within bounds', () => {
    const of = (level: number) => new Float32Array(100).fill(level);
    // definition: the ratio of the root mean squares
    expect(matchingGain(of(0.1), of(0.4))).toBeCloseTo(4, 5);
    expect(matchingGain(of(0.8), of(0.4))).toBeCloseTo(0.5, 5);
    expect(matchingGain(of(0.0001), of(0.4))).toBe(12);
    expect(matchingGain(of(0), of(0.4))).toBe(1);
  });
});

describe('what is said of a take', () => {
  it('[ST111] says what could not be told in the reader’s language, under what a teacher would say', async () => {
    const form = { ...formOnce(lesson), repeat: 4 };
    const { strokes, durationSeconds } = perform(lesson, { exercise: 1, form, bpm: Bpm(160) });
    const notes = notesSent(strokes);
    const { report } = listenToNotes(notes, durationSeconds, { lesson, exercise: 1, form, bpm: Bpm(200) });
    const judgement = report && judge({ lesson, exercise: 1, form, bpm: Bpm(200) }, { report }, 'beginner');
    const view = async (tag: LanguageTag) => {
      const shown = createElement(TakeReportView, { take: { ...take, report }, judgement });
      const value = { ...(await loadPractice(tag)), choose: () => undefined };
      return renderToStaticMarkup(createElement(PracticeContext, { value }, shown));
    };
    // definition: played at 160 where 200 is asked
    expect(await view('en')).toContain(
      '</ul><p class="quiet">It was played at 160 beats a minute, not at 200.</p>',
    );
    expect(await view('de')).toContain(
      '</ul><p class="quiet">Gespielt wurde mit 160 Vierteln in der Minute, nicht mit 200.</p>',
    );
  });
});

describe('a take as a file', () => {
  it('[ST85] is one zip with sound, report and facts, under a plain name', async () => {
    const audio = new Blob([new Uint8Array([1, 2, 3])]);
    const report = { version: 1 } as unknown as Take['report'];
    const whole = { take: { ...take, kind: 'audio' as const, report }, audio };
    expect(fileNameOf(whole.take)).toBe('forsta-swing-laxa-1-1-20261125-183005.zip');
    const files = unzipSync(packTake(whole.take, await asRecorded(whole.audio), '<svg/>'));
    expect(Object.keys(files).toSorted()).toEqual(['report.json', 'report.svg', 'take.json', 'take.wav']);
    expect([...(files['take.wav'] ?? [])]).toEqual([1, 2, 3]);
    expect(JSON.parse(strFromU8(files['report.json'] ?? new Uint8Array()))).toEqual({ version: 1 });
    expect(JSON.parse(strFromU8(files['take.json'] ?? new Uint8Array()))).toMatchObject({
      number: 1,
      kind: 'audio',
    });
  });
});
