/**
 * Stories heard: the strokes as a kit sends them, or as an ear hears them that makes no mistake.
 *
 * Conventions: seconds; the first bar line lies `LEAD_SECONDS` after the start.
 */
import { isVoice } from '@shedbook/core';
import { createLiveListener, listenToNotes } from '@shedbook/listen';
import { playRound, playStory } from './play.mjs';

/** Silence before the first bar line. */
export const LEAD_SECONDS = 1.5;

const notesOf = (strokes) =>
  strokes.map(({ voice, timeSeconds, levelDb }) => ({
    voice,
    timeSeconds: timeSeconds + LEAD_SECONDS,
    levelDb,
  }));

/** What the page plays meanwhile, exactly in time, where a microphone hears it. */
function loudspeakerStrokes(lesson, form, story, rounds) {
  const { exercise, layers, sounding = [], latencyMs = 0 } = story;
  if (!story.loudspeaker) return [];
  return rounds.flatMap(({ startSeconds, bpm }, round) =>
    playRound(
      lesson,
      { exercise, form, bpm, layers },
      { only: sounding, spreadMs: 0.8 },
      `loudspeaker ${round}`,
    ).strokes.map((stroke) => ({
      ...stroke,
      timeSeconds: stroke.timeSeconds + startSeconds + latencyMs / 1000,
      levelDb: -10,
    })),
  );
}

/** Two strokes of one voice at one moment are one: the louder one, which is the student's. */
function joined(own, loud) {
  const left = loud.filter(
    (stroke) =>
      !own.some(
        (other) => other.voice === stroke.voice && Math.abs(other.timeSeconds - stroke.timeSeconds) < 0.045,
      ),
  );
  return [...own, ...left].toSorted((a, b) => a.timeSeconds - b.timeSeconds);
}

const asAudio = ({ report, refusal }) => ({
  report: report && { ...report, take: { ...report.take, kind: 'audio' } },
  refusal,
});

/** What is heard of a story: the whole take, and each loop where there is a click. */
export function hearStory(lesson, form, story) {
  const { strokes, rounds } = playStory(lesson, form, story);
  const { exercise, bpm = lesson.tempo.startBpm } = story;
  const all = joined(strokes, loudspeakerStrokes(lesson, form, story, rounds));
  const notes = notesOf(all.filter(({ voice }) => isVoice(voice)));
  const once = { ...form, repeat: 1, countInBars: 0 };
  const heardAs = story.microphone ? asAudio : (heard) => heard;
  if (!story.click) {
    const asked = { lesson, exercise, form: { ...once, repeat: rounds.length }, bpm };
    const seconds = (notes.at(-1)?.timeSeconds ?? 0) + 1;
    return { take: heardAs(listenToNotes(notes, seconds, asked)), loops: [] };
  }
  const listener = createLiveListener({ lesson, exercise, form: once, bpm }, {});
  const loops = rounds.map(({ startSeconds, bpm: tempo }) =>
    listener.startLoop(startSeconds + LEAD_SECONDS, tempo),
  );
  for (const { voice, timeSeconds, levelDb } of notes) listener.note(timeSeconds, voice, levelDb);
  return {
    take: heardAs(listener.finish()),
    loops: loops.map((loop) => heardAs(listener.loopReport(loop))),
  };
}

/** A story as a task of the judge. */
export function taskOf(lesson, form, story) {
  const { exercise, bpm, plays, sounding, layers } = story;
  return {
    lesson,
    exercise,
    form: { ...form, repeat: 1, countInBars: 0 },
    ...(bpm ? { bpm } : {}),
    ...(plays ? { plays } : {}),
    ...(sounding ? { sounding } : {}),
    ...(layers ? { layers } : {}),
  };
}
