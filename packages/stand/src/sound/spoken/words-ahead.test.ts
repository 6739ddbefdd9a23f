import { Bpm, formShown } from '@shedbook/core';
import { createProgram } from '@shedbook/playing';
import { spokenPlace } from '@shedbook/sound';
import { expect, it } from 'vitest';
import { lessonOf, swing } from '../../../../../internal/testing/loops.ts';
import type { Heard } from '../player.ts';
import { type LiveSettings, Sequencer } from '../sequencer.ts';
import { wordsAhead } from './words-ahead.ts';

const RATE = 44_100;
const BPM = Bpm(90);

/** The clicks that the sequencer gives out, and the words of the count, over some seconds. */
function bothOver(seconds: number, subdivision: 1 | 3, more: Partial<LiveSettings> = {}) {
  const form = formShown(swing.lesson, 1, null);
  const program = createProgram(swing.lesson, {
    ...{ exercise: 1, form, layers: swing.lesson.layers.length, bpm: BPM },
    clicks: { subdivision },
  });
  const settings = { bpm: BPM, click: true, mute: [], trimDb: {}, ...more };
  const sequencer = new Sequencer(program, settings, RATE, 0);
  const clicks = sequencer.until(seconds * RATE).filter(({ stroke }) => stroke.voice === 'click');
  const { start } = program;
  const secondsOf = (place: number) => ((place - start) * 240) / BPM;
  const heard: Heard = { program, place: start, pass: 0, bpm: BPM, secondsOf, fromPlace: 0 };
  return { clicks, words: wordsAhead(heard, settings, 0, seconds) };
}

it('[ST3801] words fall where the clicks fall, count-in, gaps and the next time round with them', () => {
  for (const more of [{}, { click: false }, { gap: { soundingBars: 1, silentBars: 1 } }]) {
    const { clicks, words } = bothOver(20, 1, more);
    // definition: the sequencer's own samples, which [ST19] holds to the score
    expect(words.map(({ atSeconds }) => Math.round(atSeconds * RATE))).toEqual(
      clicks.map(({ sample }) => sample),
    );
    expect(words.length).toBeGreaterThan(3);
  }
});

it('[ST3801] triplets are counted "1 trip let", every word of which was recorded in both languages', () => {
  const { words } = bothOver(8, 3);
  // common practice: triplets are counted so; the form counts in one bar, on the beats alone
  expect(words.slice(0, 8).map(({ word }) => word)).toEqual(['1', '2', '3', '4', '1', 'trip', 'let', '2']);
  for (const { word } of words)
    for (const language of ['en', 'de'] as const) {
      const { startSeconds = -1, lastsSeconds = 0, feltSeconds = 1 } = spokenPlace(language, word) ?? {};
      expect(startSeconds).toBeGreaterThanOrEqual(0);
      expect(lastsSeconds).toBeLessThan(0.5);
      expect(feltSeconds).toBeLessThan(lastsSeconds);
    }
});

it('[ST3801] clicks that a form asks for are counted, whatever else is chosen', () => {
  const text = `title: T
groove: {}
comping: clap
exercises: [x x x x]
forms: {loop: {countIn: 1, sections: [{pattern: 1, click: all}, {rest: 1, click: 1}, {rest: 1, click: none}]}}
`;
  const lesson = lessonOf(text);
  const form = formShown(lesson, 1, 'loop');
  const program = createProgram(lesson, { exercise: 1, form, layers: 1, bpm: BPM });
  const secondsOf = (place: number) => ((place - program.start) * 240) / BPM;
  const heard: Heard = { program, place: program.start, pass: 0, bpm: BPM, secondsOf, fromPlace: 0 };
  const once = secondsOf(program.end) - 0.001;
  const words = (click: boolean) => wordsAhead(heard, { click }, 0, once).map(({ word }) => word);
  // definition: a bar of count-in, a bar on every beat, one on its first, one on none
  expect(words(false)).toEqual(['1', '2', '3', '4', '1', '2', '3', '4', '1']);
  // a form that says where it clicks says so whatever else is chosen
  expect(words(true)).toEqual(words(false));
  expect(wordsAhead(heard, { click: false }, once, once + 1).map(({ word }) => word)[0]).toBe('1');
});
