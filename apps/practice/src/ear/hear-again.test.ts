import { Bpm, Hertz, Seconds, TakeDb } from '@shedbook/core';
import { expect, it } from 'vitest';
import {
  formOnce,
  HEARING_LESSON,
  LEAD_SECONDS,
  lessonOf,
  playLoop,
  soundOf,
} from '../../../../internal/testing/hearing.ts';
import type { KitNote } from '../device/midi-clock.ts';
import type { EarAsked } from './ear-messages.ts';
import { ordersOf, type Recorded } from './hear-again.ts';
import { Listening } from './listening.ts';

const lesson = lessonOf(HEARING_LESSON);
const RATE = Hertz(44_100);
// definition: two bars of four at 160 bpm
const LOOP = { startSeconds: 10, endSeconds: 13, bpm: Bpm(160) };
const played = playLoop(lesson, 1, 160, () => ({ lateMs: 6 }));

const asked: EarAsked = {
  kind: 'ask',
  id: 'a',
  asked: { lesson, exercise: 1, form: formOnce(lesson), bpm: LOOP.bpm },
  onPad: null,
  sampleRateHz: null,
  originSeconds: 10 - LEAD_SECONDS,
  latencySeconds: 0.02,
};

/** Follows what an ear is told, as its thread does. */
function follow(recorded: Recorded) {
  const orders = ordersOf(recorded);
  const [first] = orders;
  if (first?.kind !== 'ask') throw new Error('the ear is told first what to listen for');
  const listening = new Listening(first);
  for (const order of orders) {
    if (order.kind === 'loop') listening.begin(order.loop);
    if (order.kind === 'note') listening.note(order.note);
    if (order.kind === 'block') listening.block(order.block);
    if (order.kind === 'time') listening.over(order.seconds);
  }
  expect(listening.isOpen).toBe(false);
  return listening.take();
}

it('[ST1800] hears a kit again as it was heard', () => {
  const notes: KitNote[] = played.flatMap(({ stroke: { voice, levelDb }, timeSeconds }) =>
    voice === 'click' ? [] : [{ voice, levelDb: TakeDb(levelDb), seconds: 10.02 + timeSeconds }],
  );
  const live = new Listening(asked);
  live.begin(LOOP);
  for (const note of notes) live.note(note);
  const again = follow({ asked, latencySeconds: 0.02, loops: [LOOP], sound: [], notes });
  expect(again.heard.report).not.toBeNull();
  expect(again.heard).toEqual(live.take().heard);
});

it('[ST1800] hears a microphone again from the pieces of its recording', () => {
  const sound = soundOf([played], 3);
  const order = { ...asked, sampleRateHz: RATE, latencySeconds: 0 };
  const live = new Listening(order);
  live.begin(LOOP);
  const pieces: Int16Array<ArrayBuffer>[] = [];
  for (let at = 0; at < sound.length; at += 4410) {
    const samples = sound.slice(at, at + 4410) as Float32Array<ArrayBuffer>;
    live.block({ frame: Math.round(order.originSeconds * RATE) + at, samples });
    const piece = live.piece();
    if (piece) pieces.push(piece);
  }
  const rest = live.piece(true);
  if (rest) pieces.push(rest);
  expect(pieces.length).toBeGreaterThan(1);
  // definition: every sample once
  expect(pieces.reduce((sum, { length }) => sum + length, 0)).toBe(sound.length);
  const again = follow({ asked: order, latencySeconds: 0, loops: [LOOP], sound: pieces, notes: [] });
  const strokesOf = ({ heard }: ReturnType<Listening['take']>) =>
    heard.report?.strokes.map(({ voice, timeSeconds }) => `${voice} ${timeSeconds.toFixed(2)}`);
  expect(strokesOf(again)?.length).toBeGreaterThan(20);
  expect(strokesOf(again)).toEqual(strokesOf(live.take()));
  expect(again.durationSeconds).toBeCloseTo(Seconds(sound.length / RATE), 3);
});
