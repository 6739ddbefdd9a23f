/**
 * Servers that do work and are killed at random moments, round after round: what was acknowledged as ordered has to be done,
 * and what was seen to be done is not begun again.
 *
 * Conventions: `kill -9` of processes of their own; work takes some hundredths of a second.
 */
import { fork } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { numbersFrom } from './mutated-tokens.mjs';

const SERVER = fileURLToPath(new URL('../../apps/server/test/do-work.mjs', import.meta.url));

/** Pieces of work that are ordered in a round. */
const ORDERS = 6;

/** Milliseconds for which work is waited for at most, once nobody is killed any more. */
const PATIENCE_MS = 120_000;

/** What a watched queue tells. @typedef {{ readonly id: string, readonly at: string, readonly told: string | null }} Seen */

/** @param {string} data @param {string} address @param {'' | 'watch'} [how] */
async function start(data, address, how = '') {
  const child = fork(SERVER, [data, address, how], {
    execArgv: [],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  await once(child, 'message');
  return child;
}

/** How often each piece of work was begun. @param {string} data */
function begunIn(data) {
  const file = join(data, 'begun');
  /** @type {Map<string, number>} */
  const times = new Map();
  for (const id of existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [])
    times.set(id, (times.get(id) ?? 0) + 1);
  return times;
}

/** Orders work, and kills the servers after some of it was acknowledged. @param {readonly import('node:child_process').ChildProcess[]} running @param {() => number} random @param {Set<string>} ordered */
async function orderAndKill(running, random, ordered) {
  const gone = running.map((child) => once(child, 'exit'));
  let left = 1 + Math.floor(random() * ORDERS);
  for (const child of running)
    child.on('message', (/** @type {{ added: string }} */ { added }) => {
      ordered.add(added);
      left -= 1;
      if (left === 0) for (const each of running) setTimeout(() => each.kill('SIGKILL'), random() * 150);
    });
  for (let n = 0; n < ORDERS; n += 1) running[n % running.length]?.send(randomUUID());
  await Promise.all(gone);
}

/**
 * Kills again and again.
 * @param {string} data an empty folder
 * @param {number} rounds
 * @param {number} seed
 * @param {{ readonly address?: string, readonly servers?: number }} [store] address of a database, and how many servers share it
 * @returns {Promise<{ readonly broken: readonly string[], readonly done: number, readonly again: number }>} `again`: begun more than once, since a server was killed over it
 */
export async function killWorkers(data, rounds, seed, { address = '', servers = 2 } = {}) {
  const random = numbersFrom(seed);
  /** @type {Set<string>} */
  const ordered = new Set();
  /** How work was when it was first seen to be done. @type {Map<string, { told: string | null, begun: number }>} */
  const done = new Map();
  const watcher = await start(data, address, 'watch');
  const look = async () => {
    watcher.send('list');
    /** @type {readonly [readonly Seen[]]} */
    const [seen] = /** @type {any} */ (await once(watcher, 'message'));
    const begun = begunIn(data);
    for (const { id, at, told } of seen)
      if (at === 'done' && !done.has(id)) done.set(id, { told, begun: begun.get(id) ?? 0 });
    return seen;
  };
  for (let round = 0; round < rounds; round += 1) {
    const running = await Promise.all(Array.from({ length: servers }, () => start(data, address)));
    await orderAndKill(running, random, ordered);
    await look();
  }
  const last = await start(data, address);
  const until = Date.now() + PATIENCE_MS;
  while ([...ordered].some((id) => !done.has(id)) && Date.now() < until) {
    await look();
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  last.kill('SIGKILL');
  await once(last, 'exit');
  const now = new Map((await look()).map((each) => [each.id, each]));
  watcher.kill('SIGKILL');
  const begun = begunIn(data);
  const broken = [...ordered].flatMap((id) => {
    const [before, after] = [done.get(id), now.get(id)];
    if (!before || !after) return [`work ${id} is ${after?.at ?? 'lost'}`];
    const isSame = after.told === before.told && begun.get(id) === before.begun;
    return isSame ? [] : [`work ${id} was done again: begun ${before.begun} and ${begun.get(id)} times`];
  });
  const again = [...begun.values()].filter((times) => times > 1).length;
  return { broken, done: done.size, again };
}
