import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkApi } from './api.mjs';
import { checkBenches } from './benches.mjs';
import { checkBrowsers } from './browsers/browsers.mjs';
import { lieOf, runnable } from './docs/run-examples.ts';
import { problemsOf } from './problems.mjs';
import { ROOMS } from './rooms.data.mjs';
import { laidOver, PLANTED, ROOT, withRooms } from './tree.mjs';

/**
 * Each folder of `planted` but `clean` holds what makes one fault when it is laid over `clean`, and in expected.txt the
 * problems, all of them, that the checks must report. Rooms of the table that `clean` has not are there and empty, but
 * for those that left-out.txt names.
 */
const FOLDER = join(ROOT, PLANTED);
const CLEAN = join(FOLDER, 'clean');
const FAULTS = readdirSync(FOLDER).filter((name) => name !== 'clean');

function linesOf(tree: ReturnType<typeof laidOver>, path: string): readonly string[] {
  return tree.has(path) ? tree.read(path).trimEnd().split('\n') : [];
}

/** Every problem of a planted tree: of its files, its surface, and its examples. */
async function problemsIn(tree: ReturnType<typeof laidOver>): Promise<readonly string[]> {
  const leftOut = linesOf(tree, 'left-out.txt');
  const house = withRooms(
    tree,
    ROOMS.map(({ name }) => name).filter((name) => !leftOut.includes(name)),
  );
  const lies = await Promise.all(runnable(house).map((example) => lieOf(house, example)));
  return [...problemsOf(house), ...checkApi(house), ...lies.filter((lie) => lie !== null)];
}

describe('planted faults', () => {
  it('finds nothing wrong in the clean tree', async () => {
    expect(await problemsIn(laidOver(CLEAN))).toEqual([]);
  });

  it('has faults to look for', () => {
    expect(FAULTS.length).toBeGreaterThan(85);
  });

  it.each(FAULTS)('refuses %s', async (name) => {
    const tree = laidOver(CLEAN, join(FOLDER, name));
    const expected = linesOf(tree, 'expected.txt');
    expect((await problemsIn(tree)).toSorted()).toEqual(expected.toSorted());
  });
});

describe('planted benches', () => {
  it('refuses what a room does not take and what it does not export, and lets a right call be', async () => {
    const problems = await checkBenches(join(ROOT, 'internal/checks/planted-benches'));
    // published: TypeScript, diagnosticMessages.json: 2345 argument not assignable, 2724 no such export, did you mean
    expect(problems).toEqual([
      expect.stringMatching(/wrong-argument\.mjs\(4,14\): error TS2345: .*'number'.*'string'/),
      expect.stringMatching(/wrong-name\.mjs\(2,10\): error TS2724: .*'parsePatern'.*'parsePattern'/),
    ]);
  });
});

describe('planted pages', () => {
  it('refuses what the oldest browsers lack, and lets be what is asked for first', () => {
    const root = join(ROOT, 'internal/checks/planted-pages');
    // published: MDN browser compatibility data 8.1.9, first versions
    expect(checkBrowsers(laidOver(root), root, ['site'])).toEqual([
      expect.stringMatching(/^README\.md: does not name the oldest browsers .*Safari 16\.4/),
      'site/index.html: syntax: Unexpected token (1:6)',
      expect.stringMatching(/^site\/newer\.js: \.union\(\): chrome 111 \(has it from 122\)/),
      expect.stringMatching(/^site\/newer\.js: Promise\.withResolvers: chrome 111 \(has it from 119\)/),
      expect.stringMatching(/^site\/newer\.js: navigator\.wakeLock: firefox 121 \(has it from 126\)/),
      expect.stringMatching(/^site\/newer\.js: VideoFrame: firefox 121 \(has it from 130\)/),
      expect.stringMatching(/^site\/style\.css: @starting-style: chrome 111 \(has it from 117\)/),
      expect.stringMatching(/^site\/style\.css: :state: chrome 111 \(has it from 125\)/),
      expect.stringMatching(/^site\/style\.css: light-dark\(\): chrome 111 \(has it from 123\)/),
      expect.stringMatching(/^site\/syntax\.js: syntax: Unexpected token/),
    ]);
  });
});
