import { sql } from 'kysely';
import { expect, it } from 'vitest';
import { createHourStore } from '../../src/store/hours.ts';
import { createStudentStore } from '../../src/store/students.ts';
import { DAY, hoursOf, NOTES, newStudent, wrote } from '../dated.ts';
import type { TestStore } from '../stores.ts';
import { send, temporaryFolder } from '../temporary.ts';

/** Dated lessons, in whichever database it lies. */
export function hoursSuite({ open, startTestServer }: TestStore): void {
  it('[SE3000] keeps a dated lesson, and refuses what was made from another revision', async () => {
    const server = await startTestServer();
    const { id } = await newStudent(server);
    const at = (day: string) => `/api/students/${id}/hours/${day}`;
    expect(await hoursOf(server, id)).toEqual({ hours: [], damaged: [] });
    expect(await send(server, 'PUT', at(DAY), wrote(0))).toMatchObject({
      status: 200,
      body: { day: DAY, attendance: 'came', notes: NOTES, set: [], revision: 1 },
    });
    expect((await send(server, 'PUT', at('2026-11-22'), wrote(0))).status).toBe(200);
    const late = await send(server, 'PUT', at(DAY), wrote(0, 'Something else.'));
    expect(late).toMatchObject({
      status: 409,
      body: { code: 'hour-changed', values: { kept: { revision: 1 } } },
    });
    expect(await send(server, 'PUT', at(DAY), wrote(1, 'More.'))).toMatchObject({ body: { revision: 2 } });
    expect((await hoursOf(server, id)).hours.map(({ day, done }) => [day, done])).toEqual([
      [DAY, 'More.'],
      ['2026-11-22', 'Feathering, then exercise 3.'],
    ]);
    // standard: ISO 8601: there is no thirtieth of February
    for (const day of ['2026-02-30', 'yesterday', '2026-11-29T10:00:00Z'])
      expect((await send(server, 'PUT', at(day), wrote(0))).status).toBe(400);
    expect((await send(server, 'PUT', '/api/students/nobody/hours/2026-11-29', wrote(0))).status).toBe(404);
  });

  it('[SE3002] names a damaged one and shows the others', async () => {
    const database = await open(temporaryFolder());
    const { id } = await createStudentStore(database, () => new Date()).create('Ifeoma');
    const hours = createHourStore(database, () => new Date());
    for (const day of [DAY, '2026-12-06'])
      await hours.save(
        { student: id, day },
        { attendance: 'came', done: 'Shuffle.', notes: '', revision: 0 },
      );
    await sql`update hours set content = replace(content, 'Shuffle', 'Scuffle') where held_on = ${DAY}`.execute(
      database,
    );
    expect(await hours.of(id)).toMatchObject({ hours: [{ day: '2026-12-06' }], damaged: [DAY] });
    await database.destroy();
  });
}
