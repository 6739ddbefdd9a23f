/**
 * Prints how the grooves that lessons start from are written down without a lesson: what is written, lacks and is invented of
 * each, meter and feel.
 *
 * Usage: node starters.mjs [SOUNDFONT]   (build the packages first; SEED names another built-in kit, HANDS=1 scatters)
 *
 * Each groove is played with its first bar of comping, eight bars long in the room, at the tempo that it starts from and at its
 * goal. A stroke is written where its voice has one within 60 ms of it. With HANDS strokes scatter by 9 ms and 1.5 dB.
 */
import { readFileSync } from 'node:fs';
import {
  formatFeel,
  Hertz,
  hasOnset,
  isVoice,
  parseLesson,
  perform,
  Seconds,
  STARTER_NAMES,
  seededRandom,
  starterText,
  struckSlots,
  toNumber,
} from '@shedbook/core';
import { TakeListener } from '@shedbook/listen';
import { createKit, loadSoundFontKit, render } from '@shedbook/sound';

const RATE = Hertz(44_100);
const NEAR_SECONDS = 0.06;
const BEFORE_SECONDS = 0.7;
const LOOP = {
  name: 'loop',
  sections: [{ play: 'pattern', bars: 8, ending: null }],
  repeat: 1,
  countInBars: 0,
};
const [, , font] = process.argv;
const options = { sampleRateHz: RATE, ...(process.env.SEED ? { seed: process.env.SEED } : {}) };
const kit = font ? loadSoundFontKit(readFileSync(font), options) : createKit(options);

function played(lesson, bpm) {
  const { strokes, durationSeconds } = perform(lesson, { exercise: 1, form: LOOP, bpm });
  const random = seededRandom(`starters ${lesson.title} ${bpm}`);
  const scatter = () => Array.from({ length: 12 }, () => random.next()).reduce((a, b) => a + b) - 6;
  const spread = process.env.HANDS ? 1 : 0;
  const own = strokes
    .filter(({ voice }) => isVoice(voice))
    .map((stroke) => ({
      ...stroke,
      timeSeconds: Seconds(stroke.timeSeconds + BEFORE_SECONDS + spread * 0.009 * scatter()),
      levelDb: stroke.levelDb + spread * 1.5 * scatter(),
    }));
  const ordered = own.toSorted((a, b) => a.timeSeconds - b.timeSeconds);
  return { strokes: ordered, durationSeconds: Seconds(durationSeconds + 2 * BEFORE_SECONDS) };
}

/** When each written stroke would sound, evenly inside its beat. */
function timesOf({ parts, bars, meter }) {
  const whole = toNumber(meter.bar);
  const startOf = (beat) => meter.beats.slice(0, beat).reduce((sum, length) => sum + toNumber(length), 0);
  return parts.flatMap(({ voice, pattern }) =>
    pattern.bars.flatMap((cells, bar) =>
      cells.flatMap((cell, beat) =>
        struckSlots(cell).map((slot) => {
          const at = startOf(beat) + (slot / cell.marks.length) * toNumber(meter.beats[beat]);
          return { voice, seconds: bars[bar].startSeconds + (at / whole) * bars[bar].durationSeconds };
        }),
      ),
    ),
  );
}

/** What of a take is written, and what besides. */
function compare(strokes, transcript) {
  const free = new Set(timesOf(transcript));
  let written = 0;
  for (const { voice, timeSeconds } of strokes) {
    const near = [...free].find(
      (one) => one.voice === voice && Math.abs(one.seconds - timeSeconds) < NEAR_SECONDS,
    );
    if (!near) continue;
    free.delete(near);
    written += 1;
  }
  return { written, invented: free.size };
}

const sum = { takes: 0, whole: 0, meter: 0, strokes: 0, written: 0, invented: 0 };
for (const name of STARTER_NAMES) {
  const { lesson } = parseLesson(starterText(name, name), name);
  for (const bpm of [lesson.tempo.startBpm, lesson.tempo.goalBpm]) {
    const { strokes, durationSeconds } = played(lesson, bpm);
    const { left, right } = render({ strokes, durationSeconds }, { kit, setUp: lesson.setUp, room: true });
    const listener = new TakeListener(RATE);
    listener.push(left.map((sample, i) => (sample + right[i]) / 2));
    const { transcript } = listener.transcribe();
    const due = strokes.filter(hasOnset);
    const { written, invented } = transcript ? compare(due, transcript) : { written: 0, invented: 0 };
    sum.takes += 1;
    sum.whole += written === due.length && invented === 0 ? 1 : 0;
    sum.meter += transcript?.meter.text === lesson.meter.text ? 1 : 0;
    sum.strokes += due.length;
    sum.written += written;
    sum.invented += invented;
    const found = transcript ? `${transcript.meter.text}, ${formatFeel(transcript.feel)}` : 'refused';
    const assumed = transcript?.assumed.length ?? 0;
    console.log(
      `${name} at ${bpm}: ${written} of ${due.length} written, ${assumed} of them as elsewhere, ${invented} invented; ${found}`,
    );
  }
}
console.log(
  `${sum.takes} takes, ${sum.whole} whole, ${sum.meter} in their meter; of ${sum.strokes} strokes ${sum.written} written, ${sum.invented} invented`,
);
