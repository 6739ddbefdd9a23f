import type { JournalPage, ListedTeacher, RosterPage, Session } from '@shedbook/routes';
import { ROUTES, type Route } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { allOfBram, aSchool, askingFor, DAY, GUARDED, read, SECRET, TAKE } from '../a-school.ts';
import type { TestStore } from '../stores.ts';
import { temporaryFolder } from '../temporary.ts';

/** Several teachers, in whichever database they lie. */
export function teachersSuite(store: TestStore): void {
  it('[SE7400] [SE7401] tells another teacher nothing of a student and lets them change nothing, whatever route they ask', async () => {
    const school = await aSchool(store);
    const before = await allOfBram(school);
    expect(before.split(SECRET).length).toBeGreaterThan(8);
    const refusedOf: Record<string, number> = {};
    for (const name of GUARDED) {
      const { method, path, body } = askingFor(name, school);
      const told = await school.ana(method, path, body);
      expect([name, told.text.includes(SECRET)]).toEqual([name, false]);
      const { whose }: Route = ROUTES[name];
      const says = { status: told.status, text: told.text };
      if (whose === 'student' || whose === 'student-of-link') {
        // in the very words in which there is nothing
        const nothing = askingFor(name, school, 'nobody');
        const none = await school.ana(nothing.method, nothing.path, nothing.body);
        expect([name, says]).toEqual([name, { status: 404, text: none.text }]);
      }
      if (whose === 'head') expect([name, told.status, told.text]).toEqual([name, 403, HEAD_ONLY]);
      if (whose === 'lesson' || whose === 'book')
        expect([name, told.status, told.text]).toEqual([name, 403, NOT_YOURS]);
      refusedOf[whose] = (refusedOf[whose] ?? 0) + 1;
    }
    // every kind of route was met
    expect(Object.keys(refusedOf).toSorted()).toEqual(
      ['book', 'demonstration', 'head', 'lesson', 'own', 'school', 'student', 'student-of-link'].toSorted(),
    );
    for (const path of [
      `/api/practice.csv?student=${school.bram.id}`,
      `/api/lessons/${school.lesson}/practice.zip?student=${school.bram.id}`,
    ])
      expect([path, (await school.ana('GET', path)).status]).toEqual([path, 404]);
    expect(await allOfBram(school)).toBe(before);
  });

  it('[SE7402] a head reads names of all students and of their own alone the rest; a student handed over takes everything along', async () => {
    const school = await aSchool(store);
    const { head, ana, noor } = school;
    const kaito = await school.enrol(ana, 'kaito-of-ana');
    const list = await read<readonly ListedTeacher[]>(head, 'GET', '/api/teachers');
    expect(list.map(({ name, role, students, hasJoined }) => [name, role, students, hasJoined])).toEqual([
      ['', 'head', 1, true],
      ['Ana', 'teacher', 1, true],
      ['Noor', 'teacher', 0, true],
    ]);
    const [first, , third] = list;
    expect(await read(head, 'GET', '/api/school/students')).toEqual([
      { id: school.bram.id, name: SECRET, teacher: first?.id },
      { id: kaito.id, name: 'kaito-of-ana', teacher: list[1]?.id },
    ]);
    for (const path of ['', '/log', '/takes', '/hours', '/links', `/takes/${TAKE}`, `/takes/${TAKE}/voice`])
      expect([path, (await head('GET', `/api/students/${kaito.id}${path}`)).status]).toEqual([path, 404]);
    for (const path of [
      '/api/students',
      '/api/students/names',
      '/api/inbox?playedBefore=2027-01-01T00:00:00Z',
      '/api/bin',
      '/api/everything.json',
      '/api/practice.csv',
    ])
      expect([path, (await head('GET', path)).text.includes('kaito-of-ana')]).toEqual([path, false]);
    expect((await head('GET', '/api/backup')).status).toBe(403);
    await read(head, 'PUT', `/api/school/students/${kaito.id}`, { teacher: third?.id });
    expect((await ana('GET', `/api/students/${kaito.id}`)).status).toBe(404);
    expect((await read<RosterPage>(ana, 'GET', '/api/students')).students).toEqual([]);
    expect((await read<RosterPage>(noor, 'GET', '/api/students')).students.map(({ name }) => name)).toEqual([
      'kaito-of-ana',
    ]);
    for (const path of ['/log', '/takes', '/hours', '/links'])
      expect((await noor('GET', `/api/students/${kaito.id}${path}`)).text.length).toBeGreaterThan(20);
    // the private link goes on, whoever teaches
    expect((await kaito.page('POST', 'log', { version: 1, rows: ['{"id":"later"}'] })).status).toBe(200);
  });

  it('[SE7403] the journal tells a teacher of their own students and deeds, with who did what; a head everything', async () => {
    const school = await aSchool(store);
    const { head, ana, noor } = school;
    const kaito = await school.enrol(ana, 'kaito-of-ana');
    await read(ana, 'DELETE', `/api/students/${kaito.id}/hours/${DAY}`);
    const told = async (asker: typeof ana) => (await read<JournalPage>(asker, 'GET', '/api/journal')).entries;
    const own = await told(ana);
    expect(own[0]).toMatchObject({ who: 'desk', did: 'hour-erased', name: 'kaito-of-ana', teacher: 'Ana' });
    expect(own.at(-1)).toMatchObject({ did: 'teacher-joined', teacher: 'Ana' });
    expect(own.find(({ did }) => did === 'take-sent')).toMatchObject({ who: 'student', teacher: null });
    expect(own.every(({ name }) => name === null || name === 'kaito-of-ana')).toBe(true);
    expect((await told(noor)).map(({ did }) => did)).toEqual(['teacher-joined']);
    const all = (await told(head)).map(({ name }) => name);
    expect([all.includes(SECRET), all.includes('kaito-of-ana')]).toEqual([true, true]);
    // who was erased has no name in it, and still is nobody else's
    await read(ana, 'DELETE', `/api/students/${kaito.id}/for-good`);
    expect((await told(noor)).map(({ did }) => did)).toEqual(['teacher-joined']);
    expect((await told(ana))[0]).toMatchObject({ did: 'student-erased', name: null, teacher: 'Ana' });
  });

  it('[SE7404] signs teachers in by name and passphrase, lets each in once by a letter, and asks on this computer too', async () => {
    const school = await aSchool(store);
    const { nobody, head, ana, server } = school;
    const status = async (body: object) => (await nobody('POST', '/api/session', body)).status;
    expect(await status({ name: 'aNA ', passphrase: 'Ana has brushes, too' })).toBe(200);
    expect(await status({ name: 'Ana', passphrase: 'Noor has brushes, too' })).toBe(403);
    expect(await status({ passphrase: 'Ana has brushes, too' })).toBe(403);
    expect(await status({ name: 'Nobody', passphrase: 'Ana has brushes, too' })).toBe(403);
    const told = await read<Session>(ana, 'GET', '/api/session');
    expect(told).toMatchObject({ state: 'in', school: { teacher: { name: 'Ana', role: 'teacher' } } });
    expect(await read(nobody, 'GET', '/api/session')).toEqual({
      ...{ state: 'out', school: { teacher: null }, hasPasskeys: false },
    });
    // a letter opens once, the one before opens nothing, and whoever had signed in has to do so again
    const [, { id = '' } = {}] = await read<readonly ListedTeacher[]>(head, 'GET', '/api/teachers');
    const letter = async () =>
      (await read<{ readonly address: string }>(head, 'POST', `/api/teachers/${id}/invitation`)).address;
    const [before, after] = [await letter(), await letter()];
    expect(after).toMatch(/^https:\/\/lessons\.example\/#invitation=[\w-]{43}$/);
    const join = (address: string) =>
      nobody('POST', '/api/invitation', { token: address.split('=')[1], passphrase: 'quite another one' });
    expect([(await join(before)).status, (await join(after)).status, (await join(after)).status]).toEqual([
      404, 200, 404,
    ]);
    expect((await ana('GET', '/api/students')).status).toBe(401);
    expect(await status({ name: 'Ana', passphrase: 'quite another one' })).toBe(200);
    await server.close();
    const here = await store.startTestServer({ dataDir: school.dataDir });
    expect((await fetch(new URL('/api/students', here.url))).status).toBe(401);
  });

  it('[SE7405] a teacher who is let go comes in no more, and what was theirs is the head’s; the first teacher stays', async () => {
    const school = await aSchool(store);
    const { head, ana } = school;
    const kaito = await school.enrol(ana, 'kaito-of-ana');
    const list = () => read<readonly ListedTeacher[]>(head, 'GET', '/api/teachers');
    const [first, second, third] = await list();
    const change = (id = '', name: string, role: string) =>
      head('PUT', `/api/teachers/${id}`, { name, role });
    expect((await change(first?.id, 'Mo', 'teacher')).text).toContain('first-stays');
    expect((await head('DELETE', `/api/teachers/${first?.id}`)).text).toContain('first-stays');
    expect((await change(second?.id, 'nöOR', 'head')).text).toContain('name-taken');
    expect((await change(third?.id, 'Noor B.', 'teacher')).status).toBe(204);
    await change(second?.id, 'Ana', 'head');
    // two heads: neither reads what is the other's
    expect((await ana('GET', '/api/teachers')).status).toBe(200);
    expect((await ana('GET', `/api/students/${school.bram.id}`)).status).toBe(404);
    await read(head, 'DELETE', `/api/teachers/${second?.id}`);
    expect((await ana('GET', '/api/students')).status).toBe(401);
    expect((await read<RosterPage>(head, 'GET', '/api/students')).students.map(({ id }) => id)).toContain(
      kaito.id,
    );
    expect((await list()).map(({ name }) => name)).toEqual(['', 'Noor B.']);
  });

  it('[SE7406] a backup has every teacher’s students; who was let go since stays so, and what was theirs is the head’s', async () => {
    const school = await aSchool(store);
    const { head, ana, dataDir } = school;
    const kaito = await school.enrol(ana, 'kaito-of-ana');
    const file = await backedUpHere(dataDir);
    const [, second] = await read<readonly ListedTeacher[]>(head, 'GET', '/api/teachers');
    await read(head, 'DELETE', `/api/teachers/${second?.id}`);
    await store.restore(dataDir, file);
    const roster = await read<readonly { readonly id: string; readonly teacher: string }[]>(
      ...([head, 'GET', '/api/school/students'] as const),
    );
    expect(roster.map(({ id, teacher }) => [id, teacher])).toEqual([
      [school.bram.id, 'first'],
      [kaito.id, 'first'],
    ]);
    const ofAna = { name: 'Ana', passphrase: 'Ana has brushes, too' };
    expect((await school.nobody('POST', '/api/session', ofAna)).status).toBe(403);
    // in a new folder they are as they were
    const fresh = temporaryFolder();
    await store.restore(fresh, file);
    const { url } = await store.startTestServer({ dataDir: fresh, address: 'http://lessons.example' });
    const headers = { 'content-type': 'application/json' };
    const body = JSON.stringify(ofAna);
    expect((await fetch(new URL('/api/session', url), { method: 'POST', headers, body })).status).toBe(200);
  });

  it('[SE7407] tells a teacher’s desk of their own students, and of nobody else’s that anything changed', async () => {
    const school = await aSchool(store);
    const { ana, noor, url } = school;
    const listening = async (cookie: string) => {
      const leaving = new AbortController();
      const headers = { cookie };
      const { body } = await fetch(new URL('/api/changes', url), { headers, signal: leaving.signal });
      const reader = body?.pipeThrough(new TextDecoderStream()).getReader();
      expect((await reader?.read())?.value).toContain(': here');
      return { next: async () => (await reader?.read())?.value, leave: () => leaving.abort() };
    };
    const [ofAna, ofNoor] = await Promise.all([
      listening(school.cookies.ana),
      listening(school.cookies.noor),
    ]);
    const heard: string[] = [];
    const first = Promise.race([
      ofNoor.next().then(() => heard.push('noor')),
      ofAna.next().then(() => heard.push('ana')),
    ]);
    const kaito = await school.enrol(ana, 'kaito-of-ana');
    await first;
    await kaito.page('POST', 'log', { version: 1, rows: ['{"id":"later"}'] });
    expect(heard).toEqual(['ana']);
    // hers comes: she was listened to all the while
    await read(noor, 'POST', '/api/students', { name: 'Sunniva' });
    await expect.poll(() => heard).toEqual(['ana', 'noor']);
    for (const each of [ofAna, ofNoor]) each.leave();
  });

  const backedUpHere = async (dataDir: string) => {
    const file = `${temporaryFolder()}/school.tar`;
    await store.backUp(dataDir, file);
    return file;
  };
}

const HEAD_ONLY = JSON.stringify({ code: 'head-only', values: {} });
const NOT_YOURS = JSON.stringify({ code: 'not-yours', values: {} });
