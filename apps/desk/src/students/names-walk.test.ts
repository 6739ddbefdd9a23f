import { identityOf, logOfRows, originOf, planFor, standExercises } from '@shedbook/coach';
import { exerciseKey, type Lesson, parseLesson, parsePattern } from '@shedbook/core';
import type { NamesInUse, StoredAssignment, StoredLesson, StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { startDesk } from '../../../../internal/testing/browser.ts';
import { changeExercise, withExercises, withLine } from '../edit/exercises.ts';
import { setSetUp } from '../edit/heading.ts';
import { withNamesKept } from '../edit/keep-names.ts';
import { ownLesson } from './own-lesson.ts';

const TEXT = `title: First swing
tempo: {start: 60, goal: 80}
exercises:
  - x . . .
  - {pattern: . x . x, sticking: R L} # to sing first
  - x x . x
`;

const NOW = '2026-11-25T18:00:00+01:00';

/** A desk with its store: sends it JSON, and reads what it says. */
async function asking() {
  const { url } = await startDesk();
  return async <T>(method: string, path: string, body?: unknown): Promise<T> => {
    const headers = { 'content-type': 'application/json' };
    const asked = body === undefined ? { method } : { method, headers, body: JSON.stringify(body) };
    const answer = await fetch(new URL(path, url), asked);
    const said = await answer.text();
    expect(answer.ok, `${method} ${path}: ${said}`).toBe(true);
    return (said === '' ? null : JSON.parse(said)) as T;
  };
}

function read(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

it('[ST7014] what is copied for a student, changed, practised and planned stays one exercise', async () => {
  const ask = await asking();
  const whole = await ask<StoredLesson>('POST', '/api/lessons', { text: TEXT });
  const student = await ask<StoredStudent>('POST', '/api/students', { name: 'Bram' });
  const sung = exerciseKey(read(TEXT).exercises[1]!);
  const set: StoredAssignment = {
    lesson: whole.id,
    exercise: sung,
    pinned: true,
    note: null,
    toBpm: null,
    by: null,
  };
  await ask('PUT', `/api/students/${student.id}`, {
    name: student.name,
    revision: student.revision,
    assignments: [set],
  });
  const shelfText = { id: whole.id, lesson: read(TEXT), text: TEXT };
  const copy = ownLesson(shelfText, [shelfText], [set], 'For Bram');
  const own = await ask<StoredLesson>('POST', '/api/lessons', { text: copy });

  // What the practice page sends of a stretch of playing, out of the lesson as it is then.
  const practised = async (id: string, nth: number, day: number) => {
    const { text } = await ask<StoredLesson>('GET', `/api/lessons/${id}`);
    const lesson = read(text);
    const loops = Array.from({ length: 8 }, () => ({ bpm: 70, verdict: 'clean', faults: [] }));
    const row = {
      ...{
        id: `${id} ${day}`,
        device: 'phone',
        startedAt: `2026-11-${day}T18:00:00+01:00`,
        durationSeconds: 90,
      },
      ...originOf({ id, lesson }, lesson.exercises[nth] ?? null),
      ...{ form: 'loop', heardBy: 'ear', loops },
    };
    await ask('POST', `/api/students/${student.id}/log`, { version: 1, rows: [JSON.stringify(row)] });
    return row;
  };
  const edited = async (id: string, change: (lesson: Lesson, text: string, inUse: NamesInUse) => string) => {
    const { text, revision } = await ask<StoredLesson>('GET', `/api/lessons/${id}`);
    const inUse = await ask<NamesInUse>('GET', `/api/lessons/${id}/names`);
    const after = change(read(text), text, inUse);
    await ask('PUT', `/api/lessons/${id}`, { text: after, revision, cause: 'edit' });
    return after;
  };

  const rows = [await practised(whole.id, 1, 20), await practised(own.id, 0, 21)];
  // On the page of the copy: another bar under the same name.
  const mine = await edited(own.id, (lesson, text, inUse) => {
    const line = withLine(lesson.exercises[0]!, 0, { pattern: parsePattern('. x x x'), sticking: null });
    return withExercises(text, lesson, changeExercise(lesson.exercises, 0, line, inUse));
  });
  expect(mine).toContain(`id: ${sung}`);
  rows.push(await practised(own.id, 0, 22));
  // In the text of the original, with the one before it, which nobody refers to.
  const theirs = await edited(whole.id, (lesson, text, inUse) =>
    withNamesKept(
      text.replace('. x . x', '. xx . x').replace('R L', 'R L R').replace('x . . .', 'x x x x'),
      lesson,
      inUse,
    ),
  );
  expect(theirs.match(/id:/g)).toHaveLength(1);
  expect(theirs).toContain('# to sing first');
  rows.push(await practised(whole.id, 1, 23));
  await edited(whole.id, (lesson, text, inUse) => setSetUp(text, lesson, 'left-handed', inUse));
  rows.push(await practised(whole.id, 1, 24));

  const shelf = await Promise.all(
    [whole.id, own.id].map(async (id) => {
      const { text } = await ask<StoredLesson>('GET', `/api/lessons/${id}`);
      return { id, lesson: read(text) };
    }),
  );
  const [first, second] = shelf as [(typeof shelf)[0], (typeof shelf)[0]];
  const { itemOf } = identityOf(shelf);
  const item = itemOf(whole.id, sung);
  expect(itemOf(whole.id, exerciseKey(first.lesson.exercises[1]!))).toBe(item);
  expect(itemOf(own.id, exerciseKey(second.lesson.exercises[0]!))).toBe(item);
  // definition: what was played five times, in either lesson, is five entries of one exercise
  expect(rows.map(({ lesson, exercise }) => itemOf(lesson, exercise))).toEqual(Array(5).fill(item));
  const log = logOfRows(rows.map((row) => ({ version: 1, text: JSON.stringify(row), isSound: true })));
  const standings = standExercises(shelf, log, Date.parse(NOW) / 86_400_000);
  expect(standings.filter((each) => each.item === item).map(({ cleanBpm }) => cleanBpm)).toEqual([70]);
  const plan = planFor(student.id, { shelf, log, now: NOW, minutes: 20, assignments: [set] });
  const planned = plan.items.filter(
    ({ kind, lesson, exercise }) => kind === 'assigned' && lesson && itemOf(lesson, exercise) === item,
  );
  expect(planned).toHaveLength(1);
});
