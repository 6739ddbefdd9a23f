import { linkSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JournalPage, KeptTakes, MadeLink, SentTake, StoredStudent, Week } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { readJournal } from '../../src/backup/by-command.ts';
import { openJournal } from '../../src/store/journal.ts';
import { createStudentStore } from '../../src/store/students.ts';
import { openTakeFiles, TAKES_FOLDER } from '../../src/store/take-files.ts';
import { createTakeStore } from '../../src/store/takes.ts';
import type { TestStore } from '../stores.ts';
import { send, temporaryFolder } from '../temporary.ts';

/** How long what is kept, in whichever database it lies. */
export function keepingSuite({ addressOf, open, setPassphrase, startTestServer }: TestStore): void {
  const DAY_MS = 24 * 3_600_000;
  const NOW = new Date('2026-11-29T12:00:00Z');
  const PASSPHRASE = 'brushes on a coated head';

  function facts(id: string) {
    return {
      ...{ id, startedAt: '2026-11-25T18:30:00+01:00', lesson: 'a', lessonTitle: 'First swing' },
      ...{ exercise: null, number: null, form: 'loop', durationSeconds: 10, verdicts: [] },
    };
  }

  function takeFile(id: string): Uint8Array {
    const sound = new Uint8Array(5000).fill(77);
    return zipSync({ 'take.json': strToU8(JSON.stringify(facts(id))), 'take.flac': sound }, { level: 0 });
  }

  it('[SE3005] erases takes that are too old, overwritten on the disk, but for those kept by hand', async () => {
    const dataDir = temporaryFolder();
    const database = await open(dataDir);
    let now = NOW;
    const clock = () => now;
    const { id: student } = await createStudentStore(database, clock).create('Sunniva');
    const takes = createTakeStore(database, openTakeFiles(dataDir), clock);
    const folder = join(dataDir, TAKES_FOLDER);
    const after = (days: number) => {
      now = new Date(NOW.getTime() + days * DAY_MS);
    };
    const keep = (id: string) =>
      takes.keep({ student, facts: facts(id), asks: false, content: takeFile(id) });
    await keep('old');
    const [oldFile = ''] = readdirSync(folder);
    // the same place on the disk under another name, so that what is left there can be looked at
    linkSync(join(folder, oldFile), join(dataDir, 'what-is-left'));
    after(0.01);
    await keep('kept');
    await takes.keepByHand({ student, take: 'kept' }, true);
    after(20);
    await keep('new');
    // nothing is erased before anybody has said so
    after(1000);
    expect((await takes.age()).size).toBe(0);
    after(27.9);
    expect(await takes.setKeeping({ takeWeeks: 4 })).toEqual({ takeWeeks: 4, due: 0 });
    expect((await takes.age()).size).toBe(0);
    // definition: four weeks are 28 days
    expect(
      (await takes.of(student)).map(({ facts: { id }, goesAt, isKept }) => [id, goesAt, isKept]),
    ).toEqual([
      ['new', new Date(NOW.getTime() + 48 * DAY_MS).toISOString(), false],
      ['kept', null, true],
      ['old', new Date(NOW.getTime() + 28 * DAY_MS).toISOString(), false],
    ]);
    after(28.1);
    expect(await takes.keeping()).toEqual({ takeWeeks: 4, due: 1 });
    expect([...(await takes.age())]).toEqual([[student, 1]]);
    expect((await takes.of(student)).map(({ facts: { id } }) => id)).toEqual(['new', 'kept']);
    expect(readdirSync(folder)).toHaveLength(2);
    const left = readFileSync(join(dataDir, 'what-is-left'));
    expect(left.length).toBeGreaterThan(5000);
    expect(left.every((byte) => byte === 0)).toBe(true);
    await takes.keepByHand({ student, take: 'kept' }, false);
    after(60);
    expect([...(await takes.age())]).toEqual([[student, 2]]);
    await database.destroy();
  });

  it('[SE3005] tells student and desk how long a take stays, and erases at the start what is due', async () => {
    const dataDir = temporaryFolder();
    const server = await startTestServer({ dataDir });
    const { id } = (await send(server, 'POST', '/api/students', { name: 'Bram' })).body as StoredStudent;
    const made = (await send(server, 'POST', `/api/students/${id}/links`)).body as MadeLink;
    const body = new Blob([new Uint8Array(takeFile('phone 1'))]);
    const headers = { 'content-type': 'application/octet-stream' };
    await fetch(new URL('takes/phone%201', made.address), { method: 'PUT', headers, body });
    expect((await send(server, 'GET', '/api/keeping')).body).toEqual({ takeWeeks: null, due: 0 });
    for (const takeWeeks of [0, 1.5, 'for ever', -4])
      expect((await send(server, 'PUT', '/api/keeping', { takeWeeks })).status).toBe(400);
    await send(server, 'PUT', '/api/keeping', { takeWeeks: 8 });
    const week = (await (await fetch(new URL('week.json', made.address))).json()) as Week;
    const [take] = week.takes;
    expect(Date.parse(take?.goesAt ?? '') - Date.parse(take?.sentAt ?? '')).toBe(56 * DAY_MS);
    const path = `/api/students/${id}/takes/phone%201/keeping`;
    const kept = (await send(server, 'PUT', path, { isKept: true })).body as SentTake;
    expect(kept).toMatchObject({ isKept: true, goesAt: null });
    await send(server, 'PUT', path, { isKept: false });
    await server.close();
    const database = await open(dataDir);
    await database.updateTable('takes').set({ sent_at: '2020-01-01T00:00:00.000Z' }).execute();
    await database.destroy();
    const again = await startTestServer({ dataDir });
    expect((await send(again, 'GET', `/api/students/${id}/takes`)).body).toEqual([]);
    expect((await send(again, 'GET', '/api/keeping')).body).toEqual({
      takeWeeks: 8,
      due: 0,
    } satisfies KeptTakes);
    const { entries } = (await send(again, 'GET', '/api/journal')).body as JournalPage;
    expect(entries[0]).toMatchObject({ who: 'server', did: 'takes-aged', student: id, name: 'Bram', n: 1 });
  });

  it('[SE3006] [SE5403] the journal says who did what, and nothing of what was said, written or kept secret', async () => {
    const dataDir = temporaryFolder();
    const address = (await addressOf(dataDir)) ?? undefined;
    await setPassphrase(PASSPHRASE, dataDir);
    const server = await startTestServer({ dataDir, address: 'http://lessons.example' });
    const at = (path: string) => new URL(path, server.url);
    const json = { 'content-type': 'application/json' };
    const signIn = (passphrase: string) =>
      fetch(at('/api/session'), { method: 'POST', headers: json, body: JSON.stringify({ passphrase }) });
    expect((await signIn('a wrong passphrase')).status).toBe(403);
    expect((await fetch(at('/api/journal'))).status).toBe(401);
    const cookie = ((await signIn(PASSPHRASE)).headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    const asDesk = async (method: string, path: string, body?: unknown) => {
      const response = await fetch(at(path), {
        method,
        headers: { cookie, ...(body === undefined ? {} : json) },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      return { status: response.status, text: await response.text() };
    };
    const read = async (method: string, path: string, body?: unknown) =>
      JSON.parse((await asDesk(method, path, body)).text) as unknown;
    const { id } = (await read('POST', '/api/students', { name: 'Ifeoma' })) as StoredStudent;
    const made = (await read('POST', `/api/students/${id}/links`)) as MadeLink;
    const page = new URL(made.address).pathname;
    await fetch(at(`${page}takes/one`), {
      method: 'PUT',
      headers: { 'content-type': 'application/octet-stream' },
      body: new Blob([new Uint8Array(takeFile('one'))]),
    });
    await asDesk('PUT', `/api/students/${id}/takes/one`, { isHeard: true, answer: 'Lighter.', marks: [] });
    await fetch(at(`/api/students/${id}/takes/one/voice?bar=2`), {
      method: 'PUT',
      headers: { cookie, 'content-type': 'application/octet-stream' },
      // standard: ISO/IEC 11172-3, the header of a frame of MPEG-1 layer III
      body: new Blob([Uint8Array.of(0xff, 0xfb, 0x90, 0x64)]),
    });
    await asDesk('DELETE', `/api/students/${id}/takes/one/voice?bar=2`);
    const row = { id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00' };
    for (const _ of ['sent', 'sent once more'])
      await fetch(at(`${page}log`), {
        ...{
          method: 'POST',
          headers: json,
          body: JSON.stringify({ version: 1, rows: [JSON.stringify(row)] }),
        },
      });
    const pass = JSON.stringify({ ...row, id: 'desk 1', heardBy: 'teacher' });
    await asDesk('POST', `/api/students/${id}/log`, { version: 1, rows: [pass] });
    await asDesk('POST', `/api/students/${id}/log`, {
      version: 1,
      rows: [JSON.stringify({ ...row, id: 'file 1' })],
    });
    await asDesk('PUT', `/api/students/${id}/hours/2026-11-29/set`, { assignments: [], revision: 1 });
    await fetch(at(`${page}takes/one`), { method: 'DELETE' });
    await asDesk('GET', '/api/everything.json');
    await asDesk('DELETE', `/api/links/${made.link.id}`);
    const told = async () => (await read('GET', '/api/journal')) as JournalPage;
    const deeds = (await told()).entries.map(({ who, did, name }) => [who, did, name]);
    expect(deeds).toEqual([
      ['desk', 'link-revoked', 'Ifeoma'],
      ['desk', 'everything-exported', null],
      ['student', 'take-taken-back', 'Ifeoma'],
      ['desk', 'exercises-set', 'Ifeoma'],
      ['desk', 'exercise-passed', 'Ifeoma'],
      ['student', 'practice-sent', 'Ifeoma'],
      ['desk', 'note-taken-back', 'Ifeoma'],
      ['desk', 'note-spoken', 'Ifeoma'],
      ['desk', 'take-heard', 'Ifeoma'],
      ['student', 'take-sent', 'Ifeoma'],
      ['desk', 'link-made', 'Ifeoma'],
      ['desk', 'signed-in', null],
      ['somebody', 'sign-in-refused', null],
      ['computer', 'passphrase-set', null],
    ]);
    await asDesk('DELETE', `/api/students/${id}/for-good`);
    const { entries } = await told();
    expect(entries[0]).toMatchObject({ did: 'student-erased', student: id, name: null });
    const token = page.split('/')[2] ?? '';
    for (const text of [JSON.stringify(entries), JSON.stringify(await readJournal(dataDir, 100, address))])
      for (const secret of [token, PASSPHRASE, 'a wrong passphrase', cookie.slice(9), 'Lighter', 'Ifeoma'])
        expect(text).not.toContain(secret);
    // what did not happen is not written
    await asDesk('DELETE', `/api/students/${id}/for-good`);
    expect((await told()).entries).toHaveLength(entries.length);
  });

  it('[SE3006] the journal comes in parts, and forgets after a year', async () => {
    const database = await open(temporaryFolder());
    let now = new Date('2025-01-01T00:00:00Z');
    const journal = openJournal(database, () => now);
    await journal.write({ who: 'desk', did: 'backed-up' });
    for (let count = 0; count < 120; count += 1) {
      now = new Date(Date.parse('2026-11-29T12:00:00Z') + Math.floor(count / 3));
      await journal.write({ who: 'desk', did: 'signed-in', n: count });
    }
    await journal.trim();
    const all = [];
    for (let after: string | null = null; ; ) {
      const page: JournalPage = await journal.page(after);
      all.push(...page.entries);
      if (page.next === null) break;
      after = page.next;
    }
    expect(all).toHaveLength(120);
    expect(new Set(all.map(({ n }) => n)).size).toBe(120);
    expect(all.map(({ at }) => at)).toEqual(
      all
        .map(({ at }) => at)
        .toSorted()
        .toReversed(),
    );
    await database.destroy();
  });

  it('[SE3007] keeps whether the coach proposes anything, and tells the student’s page', async () => {
    const server = await startTestServer();
    const { id, coach } = (await send(server, 'POST', '/api/students', { name: 'Kaito' }))
      .body as StoredStudent;
    expect(coach).toEqual({ state: 'on', until: null });
    const path = `/api/students/${id}/coach`;
    const paused = { state: 'paused', until: '2026-12-20' };
    expect(await send(server, 'PUT', path, paused)).toMatchObject({ status: 200, body: { coach: paused } });
    const made = (await send(server, 'POST', `/api/students/${id}/links`)).body as MadeLink;
    const week = (await (await fetch(new URL('week.json', made.address))).json()) as Week;
    expect(week.coach).toEqual(paused);
    expect((await send(server, 'PUT', path, { state: 'quiet', until: null })).status).toBe(400);
    expect((await send(server, 'PUT', '/api/students/nobody/coach', paused)).status).toBe(404);
  });
}
