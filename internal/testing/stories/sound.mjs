/**
 * Stories heard by the ear from rendered sound: a kit in a room, and where the story has one a loudspeaker that plays
 * what the page plays.
 *
 * Conventions: mono samples at 44 100 Hz; the loudspeaker's level in dB beside the student's kit.
 */
import { Hertz, Seconds } from '@shedbook/core';
import { createLiveListener, LiveLoudspeaker } from '@shedbook/listen';
import { render } from '@shedbook/sound';
import { keptKit } from '../kept-kit.mjs';
import { LEAD_SECONDS } from './hear.mjs';
import { playRound, playStory } from './play.mjs';

const RATE = Hertz(44_100);
const TAIL_SECONDS = 0.6;
const BLOCK = 4096;
/** How loud a loudspeaker in the room is beside the kit. */
const LOUDSPEAKER_DB = -10;

function mono({ strokes, seconds, seed }) {
  const shifted = strokes.map((stroke) => ({
    ...stroke,
    timeSeconds: Seconds(stroke.timeSeconds + LEAD_SECONDS),
  }));
  const { left, right } = render(
    { strokes: shifted, durationSeconds: Seconds(LEAD_SECONDS + seconds + TAIL_SECONDS) },
    { kit: keptKit({ sampleRateHz: RATE, seed }), setUp: 'right-handed', tail: 'cut' },
  );
  return left.map((sample, i) => 0.5 * (sample + (right[i] ?? 0)));
}

/** What the page plays, as a microphone hears it so many milliseconds later. */
function loudspeaker(lesson, form, story, { rounds, seconds }, latencyMs) {
  const { exercise, layers, sounding = [] } = story;
  const strokes = rounds.flatMap(({ startSeconds, bpm }) =>
    playRound(lesson, { exercise, form, bpm, layers }, { only: sounding }, 'loudspeaker').strokes.map(
      (stroke) => ({
        ...stroke,
        timeSeconds: stroke.timeSeconds + startSeconds + latencyMs / 1000,
      }),
    ),
  );
  return mono({ strokes, seconds, seed: 'the page' });
}

/** The microphone's sound without what the page plays, as the practice page takes it out, and what is known of that. */
function withoutPlayed(sound, played) {
  const page = new LiveLoudspeaker(RATE);
  const cleaned = [];
  for (let at = 0; at < sound.length; at += BLOCK)
    cleaned.push(...page.push(sound.slice(at, at + BLOCK), played.slice(at, at + BLOCK)));
  return { heard: Float32Array.from(cleaned), beside: page.from(0) };
}

/** What the live ear hears of a story: the take, and each loop; `isKnown` says that it knows what the page plays. */
export function hearSound(lesson, form, story) {
  const { strokes, rounds, seconds } = playStory(lesson, form, story);
  const own = mono({ strokes, seconds, seed: 'a student' });
  const gain = 10 ** (LOUDSPEAKER_DB / 20);
  const played = (latencyMs) => loudspeaker(lesson, form, story, { rounds, seconds }, latencyMs);
  const other = story.loudspeaker ? played(story.latencyMs ?? 30) : null;
  const sound = other ? own.map((sample, i) => sample + gain * (other[i] ?? 0)) : own;
  const known = other && story.isKnown ? withoutPlayed(sound, played(0)) : { heard: sound };
  const { exercise, bpm = lesson.tempo.startBpm } = story;
  const once = { ...form, repeat: 1, countInBars: 0 };
  const listener = createLiveListener(
    { lesson, exercise, form: once, bpm },
    { sampleRateHz: RATE, only: 'reports', ...(known.beside ? { beside: known.beside } : {}) },
  );
  const loops = rounds.map(({ startSeconds, bpm: tempo }) =>
    listener.startLoop(Seconds(startSeconds + LEAD_SECONDS), tempo),
  );
  for (let at = 0; at < known.heard.length; at += BLOCK) listener.push(known.heard.slice(at, at + BLOCK));
  return { take: listener.finish(), loops: loops.map((loop) => listener.loopReport(loop)) };
}
