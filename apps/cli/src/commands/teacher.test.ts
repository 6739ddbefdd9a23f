import { CLI } from '@shedbook/words';
import { expect, it } from 'vitest';
import type { Desk, SchoolTeacher } from './serve.ts';
import { teacher } from './teacher.ts';

const FIRST: SchoolTeacher = { name: '', role: 'head', students: 1, hasJoined: true };
const ANA: SchoolTeacher = { name: 'Ana Ruiz', role: 'teacher', students: 0, hasJoined: false };

it('[CL7400] tells the address of a letter, that the first teacher has no name, and who is there in either language', async () => {
  const asked: unknown[] = [];
  const desk: Pick<Desk, 'inviteTeacher' | 'listTeachers'> = {
    inviteTeacher: async (...asking) => {
      asked.push(asking);
      return 'https://lessons.example/#invitation=secret';
    },
    listTeachers: async () => [FIRST, ANA],
  };
  const run = async (request: { readonly name?: string }, tag: 'en' | 'de') => {
    const lines: string[] = [];
    const say = (line: string) => void lines.push(line);
    const speaker = { say, warn: say, progress: () => undefined, catalogue: CLI[tag] };
    const place = { address: 'https://lessons.example', data: 'folder' };
    await teacher({ ...request, ...place }, speaker, async () => desk as Desk);
    return lines;
  };
  expect(await run({ name: 'Ana Ruiz' }, 'en')).toEqual([
    'Ana Ruiz chooses a passphrase at this address, which opens once, within two weeks:',
    'https://lessons.example/#invitation=secret',
    'The first teacher has no name yet: signing in, leave the name empty, then say it under Students.',
  ]);
  expect(asked).toEqual([['Ana Ruiz', { address: 'https://lessons.example', dataDir: 'folder' }]]);
  expect(await run({}, 'en')).toEqual([
    'the first teacher (head), 1 student',
    'Ana Ruiz (teacher), 0 students, was invited and never came',
  ]);
  expect(await run({}, 'de')).toEqual([
    'die erste Lehrkraft: Leitung, 1 Schüler',
    'Ana Ruiz: Lehrkraft, 0 Schüler, eingeladen und nie gekommen',
  ]);
});
