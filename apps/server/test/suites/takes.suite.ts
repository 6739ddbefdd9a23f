import { createHash } from 'node:crypto';
import {
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Inbox, MadeLink, SentTake, StoredStudent, Week } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { TestStore } from '../stores.ts';
import { send, temporaryFolder } from '../temporary.ts';

/** Takes, in whichever database it lies. */
export function takesSuite({ startTestServer }: TestStore): void {
  const FACTS = {
    id: 'phone 1',
    startedAt: '2026-11-25T18:30:00+01:00',
    lesson: 'first-swing',
    lessonTitle: 'First swing',
    exercise: 'snare x.. ..x x.x ...',
    number: 1,
    form: 'loop',
    durationSeconds: 12.5,
    verdicts: [{ verdict: 'clean' }, { verdict: 'nearly' }],
    layers: 4,
  };

  const INBOX = '/api/inbox?playedBefore=2026-01-01T00:00:00Z';

  function takeFile(facts: object = FACTS, sound = 'sound'): Buffer {
    const files = { 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': strToU8(sound) };
    return Buffer.from(zipSync(files, { level: 0, mtime: FACTS.startedAt }));
  }

  /** A desk with two students, each with a private link. */
  async function aDesk() {
    const dataDir = temporaryFolder();
    const server = await startTestServer({ dataDir });
    const ask = async (method: string, path: string, body?: unknown) =>
      (await send(server, method, path, body)).body;
    const student = async (name: string) => {
      const { id } = (await ask('POST', '/api/students', { name })) as StoredStudent;
      const { address } = (await ask('POST', `/api/students/${id}/links`)) as MadeLink;
      const put = (take: string, body: Buffer, query = '') =>
        fetch(new URL(`takes/${encodeURIComponent(take)}${query}`, address), {
          method: 'PUT',
          headers: { 'content-type': 'application/octet-stream' },
          body: new Uint8Array(body),
        });
      const week = async () => (await (await fetch(new URL('week.json', address))).json()) as Week;
      const takeBack = (take: string) =>
        fetch(new URL(`takes/${encodeURIComponent(take)}`, address), { method: 'DELETE' });
      const voice = (take: string, query = '') =>
        fetch(new URL(`takes/${encodeURIComponent(take)}/voice${query}`, address));
      return { id, put, week, takeBack, voice };
    };
    const files = () =>
      existsSync(join(dataDir, 'takes')) ? readdirSync(join(dataDir, 'takes')) : ([] as string[]);
    const unheard = async (): Promise<readonly SentTake[]> =>
      ((await ask('GET', INBOX)) as Inbox).takes.map(({ take }) => take);
    return {
      server,
      dataDir,
      ask,
      files,
      unheard,
      kaito: await student('Kaito'),
      bram: await student('Bram'),
    };
  }

  describe('takes that students send', () => {
    it('[SE700] lets a take come, be listened to and answered, and brings the answer to the student', async () => {
      const { server, dataDir, ask, files, unheard, kaito, bram } = await aDesk();
      expect((await kaito.put(FACTS.id, takeFile(), '?asks=yes')).status).toBe(201);
      const { layers, ...facts } = FACTS;
      expect(await unheard()).toEqual([
        expect.objectContaining({ student: kaito.id, facts, asks: true, isHeard: false, answer: null }),
      ]);
      const address = `/api/students/${kaito.id}/takes/${encodeURIComponent(FACTS.id)}`;
      const file = await fetch(new URL(address, server.url));
      expect(Buffer.from(await file.arrayBuffer())).toEqual(takeFile());
      const opinion = { isHeard: true, answer: 'Let the last triplet fall later.' };
      expect(await ask('PUT', address, opinion)).toMatchObject(opinion);
      expect(await unheard()).toEqual([]);
      expect((await kaito.week()).takes).toEqual([expect.objectContaining({ facts, ...opinion })]);
      expect((await bram.week()).takes).toEqual([]);
      expect(statSync(join(dataDir, 'takes', files()[0] ?? '')).mode & 0o077).toBe(0);
    });

    it('[SE700] takes a take once, however often it comes, and gives it back', async () => {
      const { ask, files, unheard, kaito, bram } = await aDesk();
      await kaito.put(FACTS.id, takeFile());
      const [first] = await unheard();
      await ask('PUT', `/api/students/${kaito.id}/takes/${FACTS.id}`, { isHeard: true, answer: 'Good.' });
      await kaito.put(FACTS.id, takeFile());
      expect((await kaito.week()).takes).toEqual([
        expect.objectContaining({ sentAt: first?.sentAt, answer: 'Good.' }),
      ]);
      // another student's take of the same name is another take, and nobody takes back what is not theirs
      await bram.put(FACTS.id, takeFile(FACTS, 'another'));
      expect(files()).toHaveLength(2);
      expect((await bram.takeBack(FACTS.id)).status).toBe(204);
      expect((await bram.takeBack(FACTS.id)).status).toBe(404);
      expect((await kaito.week()).takes).toHaveLength(1);
      expect((await kaito.takeBack(FACTS.id)).status).toBe(204);
      expect(files()).toEqual([]);
      expect(await unheard()).toEqual([]);
    });

    it('[SE1613] takes nothing of a minor before a guardian has consented, and again when they withdraw', async () => {
      const { ask, files, kaito, bram } = await aDesk();
      const minority = (isMinor: boolean, consentBy: string | null) =>
        ask('PUT', `/api/students/${kaito.id}/minority`, { isMinor, consentBy });
      expect((await kaito.week()).mayRecord).toBe(true);
      expect(await minority(true, null)).toMatchObject({ minority: { isMinor: true, consent: null } });
      expect([(await kaito.week()).mayRecord, (await bram.week()).mayRecord]).toEqual([false, true]);
      const refused = await kaito.put(FACTS.id, takeFile());
      expect([refused.status, await refused.json()]).toEqual([403, { code: 'no-consent', values: {} }]);
      expect(files()).toEqual([]);
      const noted = await minority(true, 'Oda Lindqvist-Reyes');
      expect(noted).toMatchObject({ minority: { consent: { by: 'Oda Lindqvist-Reyes' } } });
      // noted again, it is still from the first day
      expect(await minority(true, 'Oda Lindqvist-Reyes')).toMatchObject({
        minority: (noted as StoredStudent).minority,
      });
      expect((await kaito.put(FACTS.id, takeFile())).status).toBe(201);
      await minority(true, null);
      expect((await kaito.put('phone 2', takeFile({ ...FACTS, id: 'phone 2' }))).status).toBe(403);
      expect((await kaito.week()).mayRecord).toBe(false);
    });

    it('[SE2202] [SE3800] pins words to bars and keeps a voice note of each and one of all, which only their own student hears, until the take goes', async () => {
      const { server, ask, kaito, bram } = await aDesk();
      await kaito.put(FACTS.id, takeFile(), '?asks=yes');
      const path = `/api/students/${kaito.id}/takes/${encodeURIComponent(FACTS.id)}`;
      const marks = [{ bar: 2, text: 'Later here.' }];
      expect(await ask('PUT', path, { isHeard: true, answer: null, marks })).toMatchObject({
        marks,
        notes: [],
      });
      for (const bar of [0, 1.5, 'x'])
        expect(
          (await send(server, 'PUT', path, { isHeard: true, answer: null, marks: [{ bar, text: 'x' }] }))
            .status,
        ).toBe(400);
      const say = (bytes: Uint8Array<ArrayBuffer>, to = path, query = '') =>
        fetch(new URL(`${to}/voice${query}`, server.url), {
          method: 'PUT',
          headers: { 'content-type': 'application/octet-stream' },
          body: bytes,
        });
      // standard: ISO/IEC 11172-3, the header of a frame of MPEG-1 layer III
      const spoken = (n: number) => Uint8Array.of(0xff, 0xfb, 0x90, 0x64, n);
      expect((await say(Uint8Array.of(0x3c, 0x68, 0x74))).status).toBe(422);
      expect((await say(spoken(1), `/api/students/${kaito.id}/takes/none`)).status).toBe(404);
      expect((await say(spoken(1))).status).toBe(200);
      // once more it takes the place of the first; the words stay
      const all = { bar: null, spokenAt: expect.any(String) };
      expect(await (await say(spoken(2))).json()).toMatchObject({ marks, notes: [all] });
      expect((await kaito.week()).takes).toMatchObject([{ marks, notes: [all], isHeard: true }]);
      // each bar has one of its own, in their order
      await say(spoken(3), path, '?bar=2');
      expect(await (await say(spoken(4), path, '?bar=1')).json()).toMatchObject({
        notes: [all, { bar: 1 }, { bar: 2 }],
      });
      expect((await kaito.week()).takes).toMatchObject([{ notes: [all, { bar: 1 }, { bar: 2 }] }]);
      const bytes = async (query: string) =>
        new Uint8Array(await (await kaito.voice(FACTS.id, query)).arrayBuffer());
      expect([await bytes(''), await bytes('?bar=1'), await bytes('?bar=2')]).toEqual([2, 4, 3].map(spoken));
      // one is taken back alone
      const gone = await send(server, 'DELETE', `${path}/voice?bar=1`);
      expect([gone.status, (await kaito.voice(FACTS.id, '?bar=1')).status]).toEqual([204, 404]);
      expect((await kaito.week()).takes).toMatchObject([{ notes: [all, { bar: 2 }] }]);
      for (const bar of ['0', '1.5', 'x', '1001'])
        expect((await say(spoken(3), path, `?bar=${bar}`)).status).toBe(400);
      const heard = await kaito.voice(FACTS.id);
      expect([heard.headers.get('content-type'), new Uint8Array(await heard.arrayBuffer())]).toEqual([
        'audio/mpeg',
        spoken(2),
      ]);
      // another student's take of the same name has nothing of it
      await bram.put(FACTS.id, takeFile());
      expect((await bram.voice(FACTS.id)).status).toBe(404);
      expect((await bram.voice(FACTS.id, '?bar=2')).status).toBe(404);
      expect(
        (await fetch(new URL(`/practice/${'A'.repeat(43)}/takes/${FACTS.id}/voice`, server.url))).status,
      ).toBe(404);
      // the take sent anew keeps what was said of it; taken back, nothing of it is left
      await kaito.put(FACTS.id, takeFile(FACTS, 'another'));
      expect((await kaito.voice(FACTS.id)).status).toBe(200);
      await kaito.takeBack(FACTS.id);
      expect((await kaito.voice(FACTS.id)).status).toBe(404);
      expect((await fetch(new URL(`${path}/voice`, server.url))).status).toBe(404);
    });

    it('[SE701] refuses what is no take, and keeps nothing of it', async () => {
      const { files, kaito } = await aDesk();
      const bad = [
        takeFile({ ...FACTS, id: 'another' }),
        takeFile({ ...FACTS, verdicts: 'none' }),
        takeFile().subarray(0, 40),
        Buffer.from('RIFF'),
      ];
      for (const body of bad) expect((await kaito.put(FACTS.id, body)).status).toBe(422);
      expect((await kaito.put(FACTS.id, Buffer.alloc(64 * 1024 * 1024 + 1))).status).toBe(413);
      expect(files()).toEqual([]);
    });

    it('[SE702] [SE2203] erases the takes of a student who is erased, and what a crash left without a take', async () => {
      const { server, dataDir, ask, files, kaito, bram } = await aDesk();
      await kaito.put(FACTS.id, takeFile());
      await bram.put(FACTS.id, takeFile());
      const receipt = await ask('DELETE', `/api/students/${kaito.id}/for-good`);
      // definition: what was sent and made above; no name is among it
      expect(receipt).toEqual({
        ...{ erasedAt: expect.any(String), rows: 0, assignments: 0, voices: 0, hours: 0, links: 1 },
        ...{ takes: 1, takeBytes: takeFile().length },
      });
      expect(files()).toHaveLength(1);
      const left = join(dataDir, 'takes', 'left.part');
      writeFileSync(left, 'half a take');
      utimesSync(left, 0, 0);
      await server.close();
      const again = await startTestServer({ dataDir });
      expect(files()).toHaveLength(1);
      expect(await (await fetch(new URL(INBOX, again.url))).json()).toMatchObject({ takesOf: 1 });
    });

    it('[SE1608] finds the file of a take that an older program named', async () => {
      const { server, dataDir, files, kaito } = await aDesk();
      await kaito.put(FACTS.id, takeFile());
      await server.close();
      // definition: the name that version 8 of the store gave, the sum of student and take
      const before = createHash('sha256')
        .update(JSON.stringify([kaito.id, FACTS.id]))
        .digest('hex');
      renameSync(join(dataDir, 'takes', files()[0] ?? ''), join(dataDir, 'takes', `${before}.zip`));
      const again = await startTestServer({ dataDir });
      const file = await fetch(new URL(`/api/students/${kaito.id}/takes/${FACTS.id}`, again.url));
      expect(Buffer.from(await file.arrayBuffer())).toEqual(takeFile());
    });

    it('[SE1609] lets a recording in place of another write over neither', async () => {
      const { ask, files, kaito } = await aDesk();
      await kaito.put(FACTS.id, takeFile());
      const [first] = files();
      await kaito.put(FACTS.id, takeFile(FACTS, 'another'));
      expect([files().length, files()[0] === first]).toEqual([1, false]);
      expect(await ask('GET', INBOX)).toMatchObject({ takesOf: 1 });
    });

    it('[SE703] says that the file of a take is damaged, rather than serve it', async () => {
      const { server, dataDir, files, kaito } = await aDesk();
      await kaito.put(FACTS.id, takeFile());
      const path = join(dataDir, 'takes', files()[0] ?? '');
      const bytes = readFileSync(path);
      bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
      writeFileSync(path, bytes);
      const { status, body } = await send(server, 'GET', `/api/students/${kaito.id}/takes/${FACTS.id}`);
      expect([status, body]).toMatchObject([409, { code: 'damaged' }]);
    });
  });
}
