import { Bpm, LeadDb, Seconds, type Stroke, seededRandom, TakeDb } from '@shedbook/core';
import { judge, judgeTaskOf, type PlayedTask, type ToJudge } from '@shedbook/judge';
import { describe, expect, it } from 'vitest';
import {
  formOnce,
  HEARING_LESSON,
  LEAD_SECONDS,
  lessonOf,
  playLoop,
  soundOf,
} from '../../../../internal/testing/hearing.ts';
import { Listening } from './listening.ts';

const lesson = lessonOf(HEARING_LESSON);
const form = formOnce(lesson);
const BPM = 160;
/** Two bars of four at 160. */
const LOOP_SECONDS = 3;
const RATE = 44_100;

const task: PlayedTask = { lesson, exercise: 1, form, layers: lesson.layers.length, bpm: Bpm(BPM), mine: [] };

const judged = (heard: ToJudge, of = task) => judge(judgeTaskOf(of), heard, 'beginner').verdict;

function loopAt(index: number, from = 10) {
  const startSeconds = from + index * LOOP_SECONDS;
  return { startSeconds, endSeconds: startSeconds + LOOP_SECONDS, bpm: Bpm(BPM) };
}

/** Listens to a kit that plays loops from 10 s on, its messages 20 ms late. */
function hearKit(loops: readonly ReturnType<typeof playLoop>[]): Listening {
  const listening = new Listening({
    id: 'a',
    asked: { lesson, exercise: 1, form, bpm: Bpm(BPM) },
    sampleRateHz: null,
    originSeconds: 8,
    latencySeconds: Seconds(0.02),
  });
  loops.forEach((strokes, index) => {
    listening.begin(loopAt(index));
    for (const { stroke, timeSeconds } of strokes) {
      if (stroke.voice === 'click') continue;
      const seconds = loopAt(index).startSeconds + timeSeconds + 0.02;
      listening.note({ voice: stroke.voice, levelDb: TakeDb(stroke.levelDb), seconds });
    }
  });
  return listening;
}

/** A hand that is no machine: its strokes lie some ms about their places. */
const hand = ({ voice, written }: Stroke) =>
  22 * (seededRandom(`${voice} ${written.bar}.${written.beat}.${written.slot}`).next() - 0.5);
const good = playLoop(lesson, 1, BPM, (stroke) => ({ lateMs: hand(stroke) }));
const withoutFoot = playLoop(lesson, 1, BPM, (stroke) =>
  stroke.voice === 'hihat-foot' ? null : { lateMs: hand(stroke) },
);
const lateSnare = playLoop(lesson, 1, BPM, (stroke) => ({
  lateMs: hand(stroke) + (stroke.voice === 'snare' ? 45 : 0),
}));

describe('listening to a kit', () => {
  it('[ST79] calls a loop as written clean, and says what was wrong in others', () => {
    const heard = hearKit([good, withoutFoot, lateSnare]).over(30);
    const verdicts = heard.map((each) => judged(each.heard));
    // definition: the strokes that were sent
    expect(verdicts.map(({ is }) => is)).toEqual(['clean', 'not yet', 'nearly']);
    expect(verdicts[1]?.about[0]).toMatchObject({ what: 'missing', voice: 'hihat-foot' });
    expect(verdicts[2]?.about[0]).toMatchObject({ what: 'late', voice: 'snare' });
    expect(Math.abs((verdicts[2]?.about[0]?.ms ?? 0) - 45)).toBeLessThan(6);
  });

  it('[ST79] places each stroke at once, its lateness less the latency', () => {
    const listening = hearKit([]);
    listening.begin(loopAt(0));
    const stroke = listening.note({ voice: 'snare', levelDb: TakeDb(0), seconds: 10.032 });
    expect(stroke.written).toEqual({ loop: 0, bar: 1, beat: 1, slot: 1 });
    // definition: 32 ms after the bar line, of which 20 ms are the way of the sound
    expect(stroke.offsetMs).toBeCloseTo(12, 6);
    expect(stroke.contextSeconds).toBeCloseTo(10.032, 9);
  });

  it('[ST7900] says of each bar, once it is over, what a report says, and of the last one with its round', () => {
    const listening = hearKit([withoutFoot, good]);
    const told = (seconds: number) =>
      listening.barsOver(seconds).map(({ number, bar, heard }) => [number, bar, heard.report?.missed.length]);
    const feet = (good.length - withoutFoot.length) / 2;
    // definition: bars of 1.5 s from 10 s on, messages 20 ms late, sound complete 160 ms after a bar
    expect(told(11.67)).toEqual([]);
    expect(told(11.69)).toEqual([[0, 1, feet]]);
    expect(listening.over(13.3).map(({ number }) => number)).toEqual([0]);
    expect(told(13.3)).toEqual([]);
    expect(told(14.7)).toEqual([[1, 1, 0]]);
    expect(listening.over(30).map(({ number }) => number)).toEqual([1]);
    expect(told(30)).toEqual([]);
  });

  it('[ST7900] gives a place to the stroke that is nearest to it, whichever came first', () => {
    const [, snare] = good.filter(({ stroke }) => stroke.voice === 'snare');
    if (!snare) throw new Error('no snare is written');
    const early = { ...snare, timeSeconds: Seconds(snare.timeSeconds - 0.05) };
    const strokes = [...good, early].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
    const [bar] = hearKit([strokes]).barsOver(11.7);
    const at = bar?.heard.report?.strokes.filter(({ voice }) => voice === 'snare').slice(1, 3);
    // definition: the first was struck 50 ms before the other one, which is the written one
    expect(at?.map(({ written }) => written?.slot ?? null)).toEqual([null, snare.stroke.written.slot]);
  });

  it('[ST74] holds levels against a kit, and leaves a microphone its margin', () => {
    const loud = good.map((each) =>
      each.stroke.voice === 'bass' ? { ...each, stroke: { ...each.stroke, levelDb: LeadDb(8) } } : each,
    );
    const [heard] = hearKit([loud]).over(30);
    const kit = heard && judged(heard.heard);
    // definition: 8 dB where −6 dB is written
    expect(kit?.about[0]).toMatchObject({ what: 'loud', voice: 'bass' });
    const report = heard?.heard.report;
    if (!report) throw new Error('nothing was heard');
    const asAudio = {
      report: { ...report, take: { ...report.take, kind: 'audio' as const } },
      refusal: null,
    };
    expect(judged(asAudio).is).toBe('clean');
  });

  it('[ST74] judges only the limbs that the student plays', () => {
    const [heard] = hearKit([withoutFoot]).over(30);
    if (!heard) throw new Error('nothing was heard');
    expect(judged(heard.heard, { ...task, mine: ['lead hand', 'other hand'] }).is).toBe('clean');
    expect(judged(heard.heard, { ...task, mine: ['other foot'] }).is).toBe('not judged');
  });

  it('[ST74] judges the bars that a form leaves to the student', () => {
    const turns = ['pattern', 'rest'] as const;
    const trade = {
      ...form,
      sections: turns.map((play) => ({ play, bars: 1, ending: null })),
    };
    const listening = new Listening({
      id: 'a',
      asked: {
        lesson,
        exercise: 1,
        form: { ...form, sections: [...trade.sections].reverse() },
        bpm: Bpm(BPM),
      },
      sampleRateHz: null,
      originSeconds: 8,
      latencySeconds: Seconds(0),
    });
    listening.begin(loopAt(0));
    for (const { stroke, timeSeconds } of good) {
      if (stroke.voice === 'click' || stroke.written.bar !== 2) continue;
      const { voice, levelDb } = stroke;
      listening.note({ voice, levelDb: TakeDb(levelDb), seconds: 10 + timeSeconds });
    }
    const [heard] = listening.over(30);
    if (!heard) throw new Error('nothing was heard');
    expect(judged(heard.heard, { ...task, form: trade }).is).toBe('clean');
  });

  it('[ST73] forgets what is broken off, and reports each loop once', () => {
    const listening = hearKit([good, good]);
    listening.breakOff(15);
    expect(listening.over(30).map(({ loop }) => loop.startSeconds)).toEqual([10]);
    expect(listening.over(40)).toEqual([]);
    expect(listening.isOpen).toBe(false);
    expect(listening.take().loops).toEqual([loopAt(0)]);
  });
});

describe('listening to a microphone', () => {
  it('[ST79] comes to the same verdicts, recording all the while', async () => {
    const sound = soundOf([good, lateSnare], LOOP_SECONDS);
    const listening = new Listening({
      id: 'a',
      asked: { lesson, exercise: 1, form, bpm: Bpm(BPM) },
      sampleRateHz: RATE,
      originSeconds: 10 - LEAD_SECONDS,
      latencySeconds: Seconds(0.05),
    });
    listening.begin(loopAt(0));
    listening.begin(loopAt(1));
    const first = Math.round((10 - LEAD_SECONDS + 0.05) * RATE);
    const strokes = Array.from({ length: Math.floor(sound.length / 256) }, (_, index) =>
      listening.block({
        frame: first + index * 256,
        samples: sound.slice(index * 256, (index + 1) * 256) as Float32Array<ArrayBuffer>,
      }),
    ).flat();
    const verdicts = listening.over(30).map(({ heard }) => judged(heard));
    expect(verdicts.map(({ is }) => is)).toEqual(['clean', 'nearly']);
    expect(verdicts[1]?.about[0]).toMatchObject({ what: 'late', voice: 'snare' });
    // definition: what was played on the beat lies on the beat, the latency taken off
    const offsets = strokes.flatMap(({ offsetMs }) => offsetMs ?? []).toSorted((a, b) => a - b);
    expect(Math.abs(offsets[offsets.length >> 1] ?? 99)).toBeLessThan(5);
    const { audio, durationSeconds } = listening.take();
    // definition: 50 ms of silence where no block came yet, then the blocks
    expect(durationSeconds).toBeCloseTo(0.05 + Math.floor(sound.length / 256) * (256 / RATE), 4);
    expect(audio?.size).toBe(44 + 2 * Math.round(durationSeconds * RATE));
  });
});
