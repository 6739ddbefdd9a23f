import type { JudgedRound } from '@shedbook/judge';
import { ENGLISH, GERMAN, teacherSentences } from '@shedbook/words';
import { expect, it } from 'vitest';
import {
  judgeKit,
  KIT_FILE,
  KIT_FORM,
  KIT_TAKES,
  type KitStory,
  LADDER,
  recordKit,
} from '../../../../internal/testing/stories/kit-takes.ts';
import { runProgram } from '../program.ts';

async function printed({ exercise, level }: KitStory, path: string, ...more: string[]): Promise<string> {
  const out: string[] = [];
  const say = (line: string) => void out.push(line);
  const what = ['--lesson', KIT_FILE, '--exercise', `${exercise}`, '--form', KIT_FORM.name, '--level', level];
  const terminal = { say, warn: () => undefined, progress: () => undefined };
  await runProgram(['listen', path, ...what, ...more], terminal);
  return out.join('\n');
}

it.each(KIT_TAKES)('[CL35] $name: the command line says what the judge says', async (story) => {
  const take = recordKit(story);
  const { judgement } = judgeKit(story, take);
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
});

it('[CL35] a take that climbed the ladder hurries nowhere', async () => {
  const { path } = recordKit(LADDER);
  const { verdict, rounds, form } = JSON.parse(await printed(LADDER, path, '--json'));
  expect(verdict).toMatchObject({ is: 'clean', about: [] });
  // definition: four rounds from the start of the lesson on, a step of 8 faster each
  const tempi = [72, 80, 88, 96];
  expect(rounds.map((one: JudgedRound) => [Math.round(one.bpm), one.verdict.is])).toEqual(
    tempi.map((bpm) => [bpm, 'clean']),
  );
  expect(form).toBe(KIT_FORM.name);
  const lines = (await printed(LADDER, path)).split('\n');
  expect(lines.filter((line) => line.startsWith('Round '))).toHaveLength(tempi.length);
  expect(lines).toContain(`Form: ${KIT_FORM.name}, 4 bars.`);
});
