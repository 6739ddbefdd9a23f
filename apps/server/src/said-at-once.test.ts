import { expect, it } from 'vitest';
import { temporaryFolder } from '../test/temporary.ts';
import { openDatabase } from './store/open.ts';
import { createStudentStore } from './store/students.ts';
import { openTakeFiles } from './store/take-files.ts';
import { createTakeStore } from './store/takes.ts';

const NOW = '2026-11-30T12:00:00.000Z';

it('[SE8700] a take that is listened to while the teacher speaks of it has been answered when they spoke', async () => {
  const folder = temporaryFolder();
  const database = openDatabase(folder);
  const clock = () => new Date(NOW);
  const { id: student } = await createStudentStore(database, clock).create('Kaito');
  const takes = createTakeStore(database, openTakeFiles(folder), clock);
  const facts = {
    ...{ id: 'one', startedAt: NOW, lesson: 'x', lessonTitle: 'First swing', exercise: null },
    ...{ number: null, form: 'loop', durationSeconds: 10, verdicts: [] },
  };
  await takes.keep({ student, facts, asks: false, content: new Uint8Array(3) });
  const name = { student, take: 'one' };
  // whichever comes first, a note was spoken: the take has been answered
  const heard = { isHeard: true, answer: null, marks: [] };
  const answers = [takes.say(name, new Uint8Array(3), null)];
  for (let turn = 0; turn < 60; turn += 1) {
    answers.push(takes.answer(name, heard));
    await Promise.resolve();
  }
  await Promise.all(answers);
  expect(await takes.of(student)).toMatchObject([{ answeredAt: NOW, notes: [{ bar: null, spokenAt: NOW }] }]);
  await database.destroy();
});
