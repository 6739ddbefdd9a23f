/**
 * The week between two lessons under attack and under the axe: private links that are nearly right, and a server that is
 * killed while a student sends and a teacher writes.
 *
 * Conventions: everything by HTTP against a server in a folder of its own; each attempt comes from an address of its
 * own, so that none is merely told to wait. A leak is an answer that says anything but no.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROUTE_NAMES, ROUTES } from '@shedbook/routes';
import { setPassphrase, startServer } from '@shedbook/server';
import { killAgainAndAgain } from '../internal/testing/kills.mjs';
import { mutatedTokens } from '../internal/testing/mutated-tokens.mjs';

export const name = 'week: links that are nearly right, and kill -9';

const TOKENS = Number(process.env.SHEDBOOK_TOKENS ?? 10_000);
const KILLS = Number(process.env.SHEDBOOK_KILLS ?? 200);
const ADDRESS = 'https://lessons.example';
const agent = new Agent({ keepAlive: true });

/** Asks as a program would, which mends no address. */
function ask(url, method, path, headers = {}, body = '') {
  const { hostname, port } = new URL(url);
  return new Promise((resolve, reject) => {
    const asking = request({ hostname, port, agent, method, path, headers }, (response) => {
      const parts = [];
      response.on('data', (part) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          text: Buffer.concat(parts).toString(),
        }),
      );
    });
    asking.on('error', reject);
    asking.end(body);
  });
}

/** Another address each time. Source: RFC 2544, 198.18.0.0/15 is for tests. */
function from(n) {
  return { 'x-forwarded-for': `198.18.${(n >> 8) & 255}.${n & 255}` };
}

const json = { 'content-type': 'application/json' };

/** A desk that others reach, with two students who have a link each. */
async function guardedDesk(dataDir) {
  const passphrase = 'brushes on a coated head';
  await setPassphrase(passphrase, dataDir);
  const server = await startServer({ port: 0, dataDir, address: ADDRESS });
  const signedIn = await ask(server.url, 'POST', '/api/session', json, JSON.stringify({ passphrase }));
  const cookie = `${signedIn.headers['set-cookie']}`.split(';')[0] ?? '';
  /** @param {string} method @param {string} path @param {object} [body] */
  const asTeacher = async (method, path, body) =>
    JSON.parse(
      (await ask(server.url, method, path, { ...(body ? json : {}), cookie }, body && JSON.stringify(body)))
        .text,
    );
  const tokens = [];
  for (const student of ['Bram', 'Ifeoma']) {
    const { id } = await asTeacher('POST', '/api/students', { name: student });
    const { address } = await asTeacher('POST', `/api/students/${id}/links`);
    tokens.push(new URL(address).pathname.split('/')[2] ?? '');
  }
  return { server, cookie, tokens };
}

const OPEN = ROUTE_NAMES.filter((each) => ROUTES[each].path.startsWith('/practice/'));

/** Every route of a private link in turn with secrets that are nearly right. @returns how many were let in */
async function tryTokens(url, tokens) {
  let leaks = 0;
  const wrong = mutatedTokens(tokens, TOKENS, 20261129);
  for (const [n, token] of wrong.entries()) {
    const route = ROUTES[OPEN[n % OPEN.length] ?? 'readWeek'];
    const path = route.path.replace(':token', encodeURIComponent(token)).replace(':take', 'phone');
    const headers = {
      ...from(n),
      'content-type': route.body === 'bytes' ? 'application/octet-stream' : json['content-type'],
    };
    const body = route.body === null ? '' : route.body === 'bytes' ? 'PK' : '{"version":1,"rows":[]}';
    const { status } = await ask(url, route.method, path, headers, body);
    const isNo = [400, 404, 414, 429].includes(status);
    if (!isNo) leaks += 1;
    // the same as a page
    const page = await ask(url, 'GET', `/practice/${encodeURIComponent(token)}/`, from(n + TOKENS));
    if (![400, 404, 414, 429].includes(page.status)) leaks += 1;
  }
  return leaks;
}

/** Every route as nobody, as a student, and from a page of another site as whoever is signed in. */
async function tryRoutes(url, cookie, tokens) {
  let leaks = 0;
  let asked = 0;
  /** @type {readonly (readonly [Record<string, string>, number])[]} */
  const tries = [
    [{}, 401],
    [{ cookie: `shedbook=${tokens[0]}` }, 401],
    [{ authorization: `Bearer ${tokens[0]}` }, 401],
    [{ cookie, origin: 'https://elsewhere.example' }, 403],
    [{ cookie, host: 'rebound.example' }, 403],
    [{ cookie, origin: 'null' }, 403],
  ];
  for (const route of ROUTE_NAMES.map((each) => ROUTES[each])) {
    const isOpen = 'isOpen' in route && route.isOpen;
    for (const [headers, no] of tries.slice(isOpen ? 3 : 0)) {
      const path = route.path.replace(':token', tokens[0] ?? '').replaceAll(/:\w+/g, '1');
      const { status } = await ask(url, route.method, path, headers);
      asked += 1;
      if (status !== no) leaks += 1;
    }
  }
  return { asked, leaks };
}

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'shedbook-week-'));
  const { server, cookie, tokens } = await guardedDesk(join(folder, 'guarded'));
  try {
    const begun = performance.now();
    const byToken = await tryTokens(server.url, tokens);
    const each = (performance.now() - begun) / TOKENS / 2;
    const { asked, leaks } = await tryRoutes(server.url, cookie, tokens);
    const killed = await killAgainAndAgain(join(folder, 'killed'), KILLS, 20261129);
    for (const broken of killed.broken.slice(0, 20)) console.log(`  ${broken}`);
    return [
      {
        what: `private links nearly right, ${TOKENS} on ${OPEN.length} routes and the page: let in`,
        value: byToken,
        unit: 'times',
      },
      { what: 'each was answered after', value: each, unit: 'ms' },
      {
        what: `routes as nobody, as a student, from another site (${asked}): let in`,
        value: leaks,
        unit: 'times',
      },
      { what: `kill -9 (${KILLS}): lost, doubled or damaged`, value: killed.broken.length, unit: 'times' },
      { what: 'rows of practice acknowledged', value: killed.rows, unit: 'rows' },
      { what: 'takes acknowledged and there', value: killed.takes, unit: 'takes' },
      { what: 'questions that the kill left unanswered', value: killed.unanswered, unit: 'questions' },
    ];
  } finally {
    agent.destroy();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
