/** Ten takes with a kit through the practice page, the desk and the command line: one verdict, one set of sentences. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { EMPTY_LOG } from '@shedbook/coach';
import {
  Bpm,
  type Form,
  isVoice,
  type Lesson,
  levelDbToVelocity,
  parseLesson,
  perform,
  TakeDb,
} from '@shedbook/core';
import { readMidi, voiceToKey } from '@shedbook/exchange';
import { judge, judgeTaskOf, type Level, recordRound } from '@shedbook/judge';
import { ENGLISH, GERMAN, teacherSentences } from '@shedbook/words';
import { type MidiEvent, writeMidi } from 'midi-file';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runProgram } from '../../../apps/cli/src/program.ts';
import { withTake } from '../../../apps/desk/src/students/take-in.ts';
import { Listening } from '../../../apps/practice/src/ear/listening.ts';
import { takeFrom } from '../../../apps/practice/src/takes/take-from.ts';
import { judgeTaken } from '../../../apps/practice/src/takes/take-remarks.ts';
import { playStory } from './play.mjs';

const FILE = new URL('../../../demo/first-swing.lesson.yaml', import.meta.url);
const lesson = parseLesson(readFileSync(FILE, 'utf8'), 'first-swing').lesson as Lesson;
const FORM = lesson.forms.find(({ name }) => name === 'loop') as Form;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedbook-one-verdict-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

interface Story {
  readonly name: string;
  readonly exercise: number;
  readonly level: Level;
  readonly bpm?: number;
  readonly ladder?: number;
  readonly play: object;
}

const TAKES: readonly Story[] = [
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

/** The take as a kit would have recorded it, and its notes as they are read from there. */
function recorded(story: Story) {
  const bpm = Bpm(story.bpm ?? lesson.tempo.startBpm);
  const { countInSeconds } = perform(lesson, { exercise: story.exercise, form: FORM, bpm });
  const once = { ...FORM, repeat: 1, countInBars: 0 };
  const { strokes, rounds } = playStory(lesson, once, {
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
  const path = join(folder, `${story.name}.mid`);
  writeFileSync(path, bytes);
  return { path, bpm, rounds, countInSeconds, notes: readMidi(bytes).notes };
}

/** The take as the practice page hears, judges and keeps it. */
function practised(story: Story, { bpm, rounds, countInSeconds, notes }: ReturnType<typeof recorded>) {
  const task = { lesson, exercise: story.exercise, form: FORM, layers: lesson.layers.length, bpm, mine: [] };
  const asked = { lesson, exercise: story.exercise, form: { ...FORM, repeat: 1, countInBars: 0 }, bpm };
  const ear = new Listening({
    ...{ asked, sampleRateHz: null, originSeconds: 0, latencySeconds: 0, id: story.name },
  });
  const loops = rounds.map(({ startSeconds, durationSeconds, bpm: at }) => ({
    startSeconds: startSeconds + countInSeconds,
    endSeconds: startSeconds + countInSeconds + durationSeconds,
    bpm: Bpm(at),
  }));
  for (const loop of loops) ear.begin(loop);
  for (const { voice, timeSeconds, levelDb } of notes)
    if (isVoice(voice)) ear.note({ seconds: timeSeconds, voice, levelDb: TakeDb(levelDb) });
  const heard = ear.over(Number.POSITIVE_INFINITY);
  const judged = heard.map(({ loop, number, heard: each }) => ({
    ...{ stretch: story.name, number, loop, task: { ...task, bpm: loop.bpm } },
    judgement: judge(judgeTaskOf({ ...task, bpm: loop.bpm }), each, story.level),
  }));
  const startedAt = new Date('2026-11-25T18:00:00Z');
  const stretch = { id: story.name, startedAt, task, loops: judged };
  const whole = { kind: 'take' as const, id: story.name, ...ear.take(), originSeconds: 0 };
  const kept = takeFrom(
    { stretch, take: whole, kind: 'midi', latencySeconds: 0 },
    { id: 'first-swing', title: lesson.title },
  );
  if (!kept) throw new Error('no take was kept');
  const judgement = judgeTaken(kept.take, lesson, FORM, story.level);
  if (!judgement) throw new Error('the take was not judged');
  return { take: kept.take, judgement };
}

async function printed(story: Story, path: string, ...more: string[]): Promise<string> {
  const out: string[] = [];
  const say = (line: string) => void out.push(line);
  const args = ['--lesson', FILE.pathname, '--exercise', `${story.exercise}`, '--form', FORM.name];
  const level = ['--level', story.level];
  await runProgram(['listen', path, ...args, ...level, ...more], {
    ...{ say, warn: () => undefined, progress: () => undefined },
  });
  return out.join('\n');
}

/** What the desk keeps of the report. */
function atDesk(story: Story, take: ReturnType<typeof practised>['take']) {
  const exercise = lesson.exercises[story.exercise - 1];
  if (!take.report || !exercise) throw new Error('no report');
  const shelf = { id: 'first-swing', lesson: { ...lesson, forms: [FORM] } };
  const brought = { report: take.report, id: 'r', shelf, exercise, startedAt: take.startedAt };
  return withTake(EMPTY_LOG, brought, story.level).entries[0]?.loops;
}

it.each(TAKES)('[CL35] $name: page, desk and command line agree', async (story) => {
  const take = recorded(story);
  const { take: kept, judgement } = practised(story, take);
  const along = ['--tempo', `${take.bpm}`, '--latency', '0'];
  const json = JSON.parse(await printed(story, take.path, ...along, '--json'));
  expect(json.verdict).toEqual(JSON.parse(JSON.stringify(judgement.verdict)));
  for (const [tag, language] of [
    ['en', ENGLISH],
    ['de', GERMAN],
  ] as const) {
    const sentences = teacherSentences(judgement, language);
    const lines = (await printed(story, take.path, ...along, '--language', tag)).split('\n');
    expect(lines.slice(0, sentences.length)).toEqual(sentences);
  }
  expect(atDesk(story, kept)).toEqual(judgement.rounds.map(recordRound));
  // definition: a loop judged when it was over, and the same loop in the take
  expect(kept.verdicts.map(({ verdict }) => verdict)).toEqual(
    judgement.rounds.map((round) => recordRound(round).verdict),
  );
});

it('[JU8] a take that climbed the ladder is judged round by round at the page and the desk, and hurries nowhere', async () => {
  const story: Story = {
    ...{ name: 'ladder', exercise: 13, level: 'intermediate', ladder: 8, play: { spreadMs: 7 } },
  };
  const take = recorded(story);
  const { take: kept, judgement } = practised(story, take);
  expect(judgement.rounds.map(({ bpm, verdict }) => [Math.round(bpm), verdict.is])).toEqual([
    [72, 'clean'],
    [80, 'clean'],
    [88, 'clean'],
    [96, 'clean'],
  ]);
  expect(atDesk(story, kept)?.map(({ bpm, verdict }) => [Math.round(bpm), verdict])).toEqual([
    [72, 'clean'],
    [80, 'clean'],
    [88, 'clean'],
    [96, 'clean'],
  ]);
  const { verdict } = JSON.parse(await printed(story, take.path, '--json'));
  expect(verdict).toMatchObject({ is: 'clean', about: [] });
});
