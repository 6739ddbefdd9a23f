/** What several processes of tests want is made by the first of them; the others wait. */
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';

/** How long between two looks, in milliseconds. */
const LOOK_MS = 20;

/** Whether no other process has begun. */
function begins(mark) {
  mkdirSync(dirname(mark), { recursive: true });
  try {
    mkdirSync(mark);
    return true;
  } catch {
    return false;
  }
}

/** Waits until something lies there, or nobody is making it any more. */
function waitFor(path, mark, mostMs) {
  const nobody = new Int32Array(new SharedArrayBuffer(4));
  const until = Date.now() + mostMs;
  while (!existsSync(path) && existsSync(mark) && Date.now() < until) Atomics.wait(nobody, 0, 0, LOOK_MS);
}

/**
 * Has something lie at a path: `make` writes it there, whole or not at all, unless it is there or another process does.
 * @param {string} path
 * @param {() => void} make
 * @param {number} mostMs how long it takes at most: whoever waits for longer makes it
 */
export function makeOnce(path, make, mostMs) {
  const mark = `${path}.begun`;
  const isFirst = !existsSync(path) && begins(mark);
  if (!isFirst) waitFor(path, mark, mostMs);
  if (existsSync(path)) return;
  try {
    make();
  } finally {
    rmSync(mark, { recursive: true, force: true });
  }
}
