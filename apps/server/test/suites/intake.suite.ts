import { expect, it, onTestFinished } from 'vitest';
import { weekHandlers } from '../../src/http/week-handlers.ts';
import { createLessonStore } from '../../src/store/lessons.ts';
import { createStudentStore } from '../../src/store/students.ts';
import { openTakeFiles } from '../../src/store/take-files.ts';
import { createTakeStore } from '../../src/store/takes.ts';
import { countIntake, PRACTICE_BYTES } from '../../src/week/intake.ts';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

/** What comes in, in whichever database it lies. */
export function intakeSuite({ open }: TestStore): void {
  it('[SE5001] refuses what is too much, says how long to wait, and has kept all that it acknowledged', async () => {
    const database = await open(temporaryFolder());
    onTestFinished(() => database.destroy());
    const clock = () => new Date('2031-03-01T09:00:00Z');
    const store = createLessonStore(database, clock);
    const students = createStudentStore(database, clock);
    const takes = createTakeStore(database, openTakeFiles(temporaryFolder()), clock, clock);
    const student = await students.create('Kaito');
    const intake = countIntake(() => 0);
    const parts = {
      door: async () => ({ kind: 'open', student, language: 'en' }) as const,
      ...{ store, students, takes, intake },
    };
    const send = async (count: number, handlers = weekHandlers(parts)) => {
      const rows = Array.from({ length: count }, (_, n) => `{"id":"${count}","n":${n}}`);
      const asked = { params: { token: '' }, query: {}, body: { version: 1, rows } };
      return handlers.sendPractice(asked, new AbortController().signal, {
        ip: '',
        session: null,
        teacher: null,
      });
    };
    expect(await send(100)).toMatchObject({ kind: 'answer', value: { added: 100 } });
    intake.came(student.id, { rows: 49_800, bytes: 0 }, 1);
    // definition: a hundred of fifty thousand rows are left for this day
    expect(await send(1100)).toEqual({
      kind: 'refused',
      refusal: { code: 'too-often', values: { waitSeconds: (24 * 3600) / 50 } },
    });
    expect(await send(99)).toMatchObject({ kind: 'answer', value: { added: 99 } });
    const kept = await students.rows(student.id);
    expect(kept).toHaveLength(199);
    expect(await students.practiceBytes(student.id)).toBe(
      kept.reduce((sum, { text }) => sum + text.length, 0),
    );
    const full = weekHandlers({
      ...parts,
      students: { ...students, practiceBytes: async () => PRACTICE_BYTES },
    });
    expect(await send(1, full)).toEqual({
      kind: 'refused',
      refusal: { code: 'no-room', values: { mostBytes: PRACTICE_BYTES } },
    });
    expect(await students.rows(student.id)).toHaveLength(199);
  });
}
