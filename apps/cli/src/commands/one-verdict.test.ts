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
  const { verdict } = JSON.parse(await printed(LADDER, path, '--json'));
  expect(verdict).toMatchObject({ is: 'clean', about: [] });
});
