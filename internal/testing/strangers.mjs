/**
 * A desk that others reach, under attack: every route as nobody, as a student, from a page of another site and under
 * another name; private links and sign-ins that are nearly right.
 *
 * Conventions: everything by HTTP; each attempt comes from an address of its own, so that none is merely told to wait.
 * A leak is an answer that says anything but no.
 */
import { Agent, request } from 'node:http';
import { isOpen, ROUTE_NAMES, ROUTES } from '@shedbook/routes';
import { mutatedTokens } from './mutated-tokens.mjs';

/** Where others reach the desk. */
export const OUTSIDE = 'https://lessons.example';

/** The passphrase of the desk. */
export const PASSPHRASE = 'brushes on a coated head';

const json = { 'content-type': 'application/json' };

/**
 * What was answered.
 * @typedef {object} Told
 * @property {number} status
 * @property {import('node:http').IncomingHttpHeaders} headers
 * @property {string} text
 */

/**
 * Asks as a program would, which mends no address.
 * @param {Agent} agent
 * @param {string} url
 * @param {string} method
 * @param {string} path
 * @param {Readonly<Record<string, string>>} [headers]
 * @param {string} [body]
 * @returns {Promise<Told>}
 */
function ask(agent, url, method, path, headers = {}, body = '') {
  const { hostname, port } = new URL(url);
  return new Promise((resolve, reject) => {
    const asking = request({ hostname, port, agent, method, path, headers }, (response) => {
      /** @type {Buffer[]} */
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

/** Another address each time. Source: RFC 2544, 198.18.0.0/15 is for tests. @param {number} n */
function from(n) {
  return { 'x-forwarded-for': `198.18.${(n >> 8) & 255}.${n & 255}` };
}

/**
 * A desk with two students who have a link each, and two browsers that have signed in.
 * @typedef {object} Guarded
 * @property {string} url
 * @property {readonly string[]} sessions
 * @property {readonly string[]} tokens
 */

/** Signs in and makes the students, on a desk that asks who comes. @param {Agent} agent @param {string} url @returns {Promise<Guarded>} */
async function guardedDesk(agent, url) {
  const signIn = async () => {
    const { headers } = await ask(
      agent,
      url,
      'POST',
      '/api/session',
      json,
      JSON.stringify({ passphrase: PASSPHRASE }),
    );
    return /shedbook=([^;]+)/.exec(`${headers['set-cookie']}`)?.[1] ?? '';
  };
  const sessions = [await signIn(), await signIn()];
  const cookie = `shedbook=${sessions[0]}`;
  const asTeacher = async (/** @type {string} */ path, /** @type {object} */ body) =>
    JSON.parse((await ask(agent, url, 'POST', path, { ...json, cookie }, JSON.stringify(body))).text);
  /** @type {string[]} */
  const tokens = [];
  for (const name of ['Bram', 'Ifeoma']) {
    const { id } = await asTeacher('/api/students', { name });
    const { address } = await asTeacher(`/api/students/${id}/links`, {});
    tokens.push(new URL(address).pathname.split('/')[2] ?? '');
  }
  return { url, sessions, tokens };
}

const OPEN = ROUTE_NAMES.filter((each) => ROUTES[each].path.startsWith('/practice/'));
const GUARDED = ROUTE_NAMES.filter((each) => !isOpen(ROUTES[each]));

/** No such page, not understood, too long, too often: the answers of a link that opens nothing. */
const NO = [400, 404, 414, 429];

/** Every route of a private link in turn, and its page, with secrets that are nearly right. @param {Agent} agent @param {Guarded} desk @param {number} count */
async function tryLinks(agent, { url, tokens }, count) {
  const leaks = [];
  for (const [n, token] of mutatedTokens(tokens, count, 20261129).entries()) {
    const route = ROUTES[OPEN[n % OPEN.length] ?? 'readWeek'];
    const path = route.path.replace(':token', encodeURIComponent(token)).replace(':take', 'phone');
    const isBytes = route.body === 'bytes';
    const type = isBytes ? { 'content-type': 'application/octet-stream' } : json;
    const body = route.body === null ? '' : isBytes ? 'PK' : '{"version":1,"rows":[]}';
    const told = await ask(agent, url, route.method, path, { ...from(n), ...type }, body);
    if (!NO.includes(told.status)) leaks.push(`${route.method} ${path}: ${told.status}`);
    const page = `/practice/${encodeURIComponent(token)}/`;
    const { status } = await ask(agent, url, 'GET', page, from(n + count));
    if (!NO.includes(status)) leaks.push(`GET ${page}: ${status}`);
  }
  return leaks;
}

/** What a cookie may hold. Source: RFC 6265, 4.1.1, cookie-octet; `=` fills up base64 and ends a value, so it says nothing. */
const COOKIE = /^[\x21\x23-\x2b\x2d-\x3a\x3c\x3e-\x5b\x5d-\x7e]+$/;

/** Every route of the desk in turn with sign-ins that are nearly right. @param {Agent} agent @param {Guarded} desk @param {number} count */
async function trySessions(agent, { url, sessions }, count) {
  const leaks = [];
  // some of them no browser could send
  const wrong = mutatedTokens(sessions, 2 * count, 20261130).filter((each) => COOKIE.test(each));
  for (const [n, token] of wrong.slice(0, count).entries()) {
    const route = ROUTES[GUARDED[n % GUARDED.length] ?? 'listStudents'];
    const path = route.path.replaceAll(/:\w+/g, '1');
    const { status } = await ask(agent, url, route.method, path, { cookie: `shedbook=${token}` });
    if (status !== 401) leaks.push(`${route.method} ${path} with ${token}: ${status}`);
  }
  return leaks;
}

/** Every route as nobody, as a student, and from a page of another site or by another name as whoever is signed in. @param {Agent} agent @param {Guarded} desk */
async function tryRoutes(agent, { url, sessions, tokens }) {
  const leaks = [];
  const cookie = `shedbook=${sessions[0]}`;
  let asked = 0;
  /** @type {readonly (readonly [Readonly<Record<string, string>>, number])[]} */
  const tries = [
    [{}, 401],
    [{ cookie: `shedbook=${tokens[0]}` }, 401],
    [{ authorization: `Bearer ${tokens[0]}` }, 401],
    [{ cookie, origin: 'https://elsewhere.example' }, 403],
    [{ cookie, host: 'rebound.example' }, 403],
    [{ cookie, origin: 'null' }, 403],
  ];
  for (const name of ROUTE_NAMES) {
    const route = ROUTES[name];
    for (const [headers, no] of tries.slice(GUARDED.includes(name) ? 0 : 3)) {
      const path = route.path.replace(':token', tokens[0] ?? '').replaceAll(/:\w+/g, '1');
      const { status } = await ask(agent, url, route.method, path, headers);
      asked += 1;
      if (status !== no) leaks.push(`${route.method} ${path} with ${JSON.stringify(headers)}: ${status}`);
    }
  }
  return { asked, leaks };
}

/**
 * Tries everything on a desk that was just made, with {@link PASSPHRASE} and reached by {@link OUTSIDE}.
 * @param {string} url
 * @param {number} count secrets of each kind that are nearly right
 * @returns {Promise<{ readonly asked: number, readonly leaks: readonly string[], readonly tokenMs: number }>} `tokenMs`: milliseconds for one secret, on average
 */
export async function tryAsStrangers(url, count) {
  const agent = new Agent({ keepAlive: true });
  try {
    const desk = await guardedDesk(agent, url);
    const { asked, leaks } = await tryRoutes(agent, desk);
    const begun = performance.now();
    const byTokens = [...(await tryLinks(agent, desk, count)), ...(await trySessions(agent, desk, count))];
    const tokenMs = (performance.now() - begun) / (3 * count);
    return { asked, leaks: [...leaks, ...byTokens], tokenMs };
  } finally {
    agent.destroy();
  }
}
