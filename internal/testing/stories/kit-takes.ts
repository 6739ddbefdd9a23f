/** Takes of a kit that practice page, desk and command line must judge alike, and the verdict that they must give. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  Bpm,
  type Form,
  isVoice,
  type Lesson,
  levelDbToVelocity,
  parseLesson,
  perform,
  Seconds,
  TakeDb,
} from '@shedbook/core';
import { readMidi, voiceToKey } from '@shedbook/exchange';
import { type Judgement, judge, type Level } from '@shedbook/judge';
import { createLiveListener, type Listened, type PlayedNote } from '@shedbook/listen';
import { type MidiEvent, writeMidi } from 'midi-file';
import { onTestFinished } from 'vitest';
import { playStory } from './play.mjs';

/** The lesson's file. */
export const KIT_FILE: string = fileURLToPath(
  new URL('../../../demo/first-swing.lesson.yaml', import.meta.url),
);
/** The lesson that the takes are of. */
export const KIT_LESSON = parseLesson(readFileSync(KIT_FILE, 'utf8'), 'first-swing').lesson as Lesson;
/** The form that they go through. */
export const KIT_FORM = KIT_LESSON.forms.find(({ name }) => name === 'loop') as Form;

/** Who plays what, at which level. */
export interface KitStory {
  readonly name: string;
  readonly exercise: number;
  readonly level: Level;
  readonly bpm?: number;
  readonly ladder?: number;
  readonly play: object;
}

/** Takes of known truth. */
export const KIT_TAKES: readonly KitStory[] = [
  { name: 'as written', exercise: 24, level: 'advanced', play: {} },
  { name: 'a human hand', exercise: 13, level: 'intermediate', play: { spreadMs: 8 } },
  { name: 'no snare', exercise: 10, level: 'beginner', play: { leaves: ['snare'], spreadMs: 10 } },
  { name: 'no foot', exercise: 12, level: 'advanced', play: { leaves: ['hihat-foot'], spreadMs: 6 } },
  { name: 'straight', exercise: 17, level: 'beginner', play: { straight: true, spreadMs: 8 } },
  { name: 'another exercise', exercise: 10, level: 'intermediate', play: { exercise: 15, spreadMs: 8 } },
  { name: 'on a tom', exercise: 10, level: 'beginner', play: { on: { snare: 'tom-mid' }, spreadMs: 8 } },
  {
    name: 'late',
    exercise: 10,
    bpm: 160,
    level: 'intermediate',
    play: { lateMs: { snare: 60 }, spreadMs: 6 },
  },
  { name: 'uneven', exercise: 5, level: 'advanced', play: { spreadMs: { ride: 40, snare: 8, bass: 8 } } },
  { name: 'loud', exercise: 14, level: 'advanced', play: { louderDb: { bass: 14 }, spreadMs: 6 } },
];

const TICKS = 30_000;
/** A MIDI file lasts this long a quarter where it names no tempo: its standard's default. */
const QUARTER_SECONDS = 0.5;

/** A climb of the tempo ladder in four rounds. */
export const LADDER: KitStory = {
  ...{ name: 'ladder', exercise: 13, level: 'intermediate', ladder: 8, play: { spreadMs: 7 } },
};

/** A take of a kit: its file, its notes as they are read from there, and its rounds. */
export interface KitTake {
  readonly path: string;
  readonly bpm: Bpm;
  readonly countInSeconds: Seconds;
  readonly rounds: readonly {
    readonly startSeconds: number;
    readonly durationSeconds: number;
    readonly bpm: number;
  }[];
  readonly notes: readonly PlayedNote[];
}

/** The take as a kit would have recorded it, and its notes as they are read from there. */
export function recordKit(story: KitStory): KitTake {
  const bpm = Bpm(story.bpm ?? KIT_LESSON.tempo.startBpm);
  const { countInSeconds } = perform(KIT_LESSON, { exercise: story.exercise, form: KIT_FORM, bpm });
  const once = { ...KIT_FORM, repeat: 1, countInBars: 0 };
  const { strokes, rounds } = playStory(KIT_LESSON, once, {
    ...story,
    click: true,
    rounds: story.ladder ? 4 : 2,
  });
  const ticks = strokes
    .flatMap(({ voice, timeSeconds, levelDb }) => {
      const key = isVoice(voice) ? voiceToKey(voice, 'normal', false) : null;
      const at = Math.max(0, Math.round(((timeSeconds + countInSeconds) / QUARTER_SECONDS) * TICKS));
      return key === null ? [] : [{ at, key, velocity: levelDbToVelocity(levelDb) }];
    })
    .toSorted((a, b) => a.at - b.at);
  const track = ticks.map(
    ({ at, key, velocity }, i): MidiEvent =>
      ({
        ...{ type: 'noteOn', channel: 9, noteNumber: key, velocity },
        deltaTime: at - (ticks[i - 1]?.at ?? 0),
      }) as MidiEvent,
  );
  const end = { deltaTime: 0, type: 'endOfTrack', meta: true } as const;
  const header = { format: 0, numTracks: 1, ticksPerBeat: TICKS } as const;
  const bytes = Uint8Array.from(writeMidi({ header, tracks: [[...track, end]] }));
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-kit-take-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const path = join(folder, `${story.name}.mid`);
  writeFileSync(path, bytes);
  const notes = readMidi(bytes).notes.flatMap(({ voice, timeSeconds, levelDb }): PlayedNote[] =>
    isVoice(voice) ? [{ voice, timeSeconds, levelDb: TakeDb(levelDb) }] : [],
  );
  return { path, bpm, rounds, countInSeconds, notes };
}

/** What is heard of a take along with its click, and the one judgement on it. */
export function judgeKit(
  story: KitStory,
  { bpm, rounds, countInSeconds, notes }: KitTake,
): Listened & { readonly judgement: Judgement } {
  const form = { ...KIT_FORM, repeat: 1, countInBars: 0 };
  const asked = { lesson: KIT_LESSON, exercise: story.exercise, form, bpm };
  const listener = createLiveListener(asked, { latencySeconds: Seconds(0) });
  for (const { startSeconds, bpm: at } of rounds)
    listener.startLoop(Seconds(startSeconds + countInSeconds), Bpm(at));
  for (const { voice, timeSeconds, levelDb } of notes) listener.note(timeSeconds, voice, levelDb);
  const heard = listener.finish();
  return { ...heard, judgement: judge(asked, heard, story.level) };
}
