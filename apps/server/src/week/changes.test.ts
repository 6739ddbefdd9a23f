import type { StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { send, startTestServer, temporaryFolder } from '../../test/temporary.ts';
import { setPassphrase } from '../start.ts';

const PASSPHRASE = 'brushes on a coated head';

/** Reads a stream as it comes. */
function reader(response: Response) {
  const stream = response.body?.getReader();
  const decoder = new TextDecoder();
  let text = '';
  return {
    /** Reads until a text was there. @returns whether it came before the end */
    until: async (wanted: string): Promise<boolean> => {
      while (!text.includes(wanted)) {
        const { done, value } = (await stream?.read()) ?? { done: true, value: undefined };
        if (done) return false;
        text += decoder.decode(value, { stream: true });
      }
      text = '';
      return true;
    },
    cancel: () => stream?.cancel(),
  };
}

it('[SE2205] tells the desk that something of a student changed, and not what', async () => {
  const server = await startTestServer();
  const response = await fetch(new URL('/api/changes', server.url));
  // standard: WHATWG HTML, Server-sent events, the type of a stream and the fields of an event
  expect(response.headers.get('content-type')).toContain('text/event-stream');
  const events = reader(response);
  expect(await events.until(': here')).toBe(true);
  const { id } = (await send(server, 'POST', '/api/students', { name: 'Kaito' })).body as StoredStudent;
  expect(await events.until('data: students\n\n')).toBe(true);
  await send(server, 'POST', `/api/students/${id}/log`, { version: 1, rows: ['{"id":"phone 1"}'] });
  expect(await events.until('data: students\n\n')).toBe(true);
  await events.cancel();
});

it('[SE2205] tells nothing to whoever has not signed in, nor after they signed out', async () => {
  const dataDir = temporaryFolder();
  await setPassphrase(PASSPHRASE, dataDir);
  const server = await startTestServer({ dataDir, address: 'http://lessons.example' });
  const at = (path: string) => new URL(path, server.url);
  expect((await fetch(at('/api/changes'))).status).toBe(401);
  const json = { 'content-type': 'application/json' };
  const body = JSON.stringify({ passphrase: PASSPHRASE });
  const signIn = await fetch(at('/api/session'), { method: 'POST', headers: json, body });
  const headers = { ...json, cookie: (signIn.headers.get('set-cookie') ?? '').split(';')[0] ?? '' };
  const other = await fetch(at('/api/session'), { method: 'POST', headers: json, body });
  const still = { ...json, cookie: (other.headers.get('set-cookie') ?? '').split(';')[0] ?? '' };
  const events = reader(await fetch(at('/api/changes'), { headers }));
  expect(await events.until(': here')).toBe(true);
  await fetch(at('/api/session'), { method: 'DELETE', headers: { cookie: headers.cookie } });
  await fetch(at('/api/students'), {
    method: 'POST',
    headers: still,
    body: JSON.stringify({ name: 'Bram' }),
  });
  expect(await events.until('data:')).toBe(false);
});
