import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isOpen, ROUTE_NAMES, ROUTES } from '@shedbook/routes';
import { describe, expect, it } from 'vitest';
import { startTestServer, temporaryFolder } from '../test/temporary.ts';
import { setPassphrase } from './start.ts';

const RIGHT = 'brushes on a coated head';
const OUTSIDE = 'https://lessons.example';

/** A server that others reach through a program with a certificate on this computer. */
async function outsideServer() {
  const dataDir = temporaryFolder();
  await setPassphrase(RIGHT, dataDir);
  const server = await startTestServer({ dataDir, address: OUTSIDE });
  const ask = (method: string, path: string, headers: Record<string, string> = {}, body?: unknown) =>
    fetch(new URL(path, server.url), {
      method,
      headers: { ...headers, ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  const signIn = (passphrase: string, from = '203.0.113.7') =>
    ask('POST', '/api/session', { 'x-forwarded-for': from, origin: OUTSIDE }, { passphrase });
  return { dataDir, ask, signIn };
}

function cookieOf(response: Response): string {
  return response.headers.get('set-cookie') ?? '';
}

/** What a browser sends back of a cookie. */
function sentBack(response: Response): Record<string, string> {
  return { cookie: cookieOf(response).split(';')[0] ?? '' };
}

describe('signing in', () => {
  it('[SE460] guards every route of the desk where others reach it', async () => {
    const { ask, signIn } = await outsideServer();
    const guarded = ROUTE_NAMES.filter((name) => !isOpen(ROUTES[name]));
    expect(guarded.length).toBeGreaterThan(20);
    const signed = await signIn(RIGHT);
    const { cookie = '' } = sentBack(signed);
    const wrong = [{}, { cookie: 'shedbook=' }, { cookie: 'shedbook=AAAA' }, { cookie: `other=${cookie}` }];
    for (const name of guarded) {
      const { method, path } = ROUTES[name];
      const address = path.replace(/:\w+/g, 'x');
      for (const headers of wrong) {
        const response = await ask(method, address, headers);
        expect([name, response.status, await response.json()]).toEqual([
          name,
          401,
          { code: 'sign-in-first', values: {} },
        ]);
      }
    }
    // RFC 9110, section 9.3.2: HEAD is GET without its content, so it is guarded as GET is
    expect((await ask('HEAD', '/api/lessons')).status).toBe(401);
    expect((await ask('GET', '/api/lessons', { cookie })).status).toBe(200);
  });

  it('[SE460] asks nobody on this computer alone', async () => {
    const server = await startTestServer();
    const session = await fetch(new URL('/api/session', server.url));
    expect(await session.json()).toEqual({ state: 'open' });
  });

  it('[SE461] holds until signed out or the passphrase is changed', async () => {
    const { ask, signIn, dataDir } = await outsideServer();
    const signed = await signIn(RIGHT);
    expect(signed.status).toBe(200);
    // RFC 6265, section 4.1.2, and its revision: what keeps a cookie from scripts, other sites and plain connections
    expect(cookieOf(signed)).toMatch(
      /^shedbook=[\w-]{43}; Path=\/; Max-Age=2592000; HttpOnly; SameSite=Strict; Secure$/,
    );
    const own = sentBack(signed);
    const state = async () => (await (await ask('GET', '/api/session', own)).json()) as unknown;
    expect(await state()).toEqual({ state: 'in', hasPasskeys: false });
    const other = sentBack(await signIn(RIGHT));
    await ask('DELETE', '/api/session', own);
    expect(await state()).toEqual({ state: 'out', hasPasskeys: false });
    expect((await ask('GET', '/api/lessons', own)).status).toBe(401);
    expect((await ask('GET', '/api/lessons', other)).status).toBe(200);
    await setPassphrase('another one, longer', dataDir);
    expect((await ask('GET', '/api/lessons', other)).status).toBe(401);
    expect((await signIn(RIGHT)).status).toBe(403);
    expect((await signIn('another one, longer')).status).toBe(200);
  });

  it('[SE461] lets whoever gives wrong passphrases wait, and nobody else', async () => {
    const { signIn } = await outsideServer();
    const tried = await Promise.all(Array.from({ length: 9 }, (_, n) => signIn(`wrong ${n}`)));
    const statuses = tried.map(({ status }) => status).toSorted();
    expect(statuses).toEqual([403, 403, 403, 403, 403, 429, 429, 429, 429]);
    const waiting = await signIn(RIGHT);
    expect(waiting.status).toBe(429);
    const { values } = (await waiting.json()) as { readonly values: { readonly waitSeconds: number } };
    expect(values.waitSeconds).toBeGreaterThan(850);
    expect(values.waitSeconds).toBeLessThanOrEqual(900);
    expect((await signIn(RIGHT, '203.0.113.8')).status).toBe(200);
  });

  it('[SE461] keeps neither the passphrase nor a cookie where it can be read', async () => {
    const { dataDir, signIn } = await outsideServer();
    const secret = cookieOf(await signIn(RIGHT)).slice('shedbook='.length, 'shedbook='.length + 43);
    const kept = readdirSync(dataDir)
      .map((file) => readFileSync(join(dataDir, file), 'latin1'))
      .join('');
    // RFC 9106: the encoded form names its kind and cost
    expect(kept).toContain('$argon2id$v=19$m=19456,t=2,p=1$');
    expect(kept).not.toContain(RIGHT);
    expect(kept).not.toContain(secret);
  });

  it('[SE461] takes a passphrase of ten characters to a thousand', async () => {
    const folder = temporaryFolder();
    await expect(setPassphrase('too short', folder)).rejects.toThrow(
      'found 9 characters, expected 10 to 1,000',
    );
    await expect(setPassphrase('x'.repeat(1001), folder)).rejects.toThrow('found 1,001 characters');
    await setPassphrase('ten chars!', folder);
  });
});
