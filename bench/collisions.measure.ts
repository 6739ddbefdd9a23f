/** What `collisions.bench.mjs` counts: run by vitest, since lessons at random are written for it. */
import { writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { compose } from '@shedbook/composer';
import { type Lesson, parseLesson } from '@shedbook/core';
import { layOutSheet, loadEngraver, loadFonts } from '@shedbook/engrave';
import fc from 'fast-check';
import { it } from 'vitest';
import { arbitraryDividedLesson, arbitraryLesson } from '../internal/testing/arbitrary-lesson.ts';
import { collisionsOf, tilesOnPages } from '../internal/testing/collisions.ts';
import { COMPOSED_LESSONS } from '../internal/testing/composed-lessons.data.mjs';
import { ENGLISH_SHEET } from '../internal/testing/in-english.ts';

const { resolve } = createRequire(new URL('../packages/engrave/package.json', import.meta.url));
const engraver = await loadEngraver();
const fonts = await loadFonts((specifier) => readFile(resolve(specifier)));

const LESSONS = Number(process.env['SHEDBOOK_LESSONS'] ?? 2000);
const SEED = Number(process.env['SHEDBOOK_SEED'] ?? 1);

/** Exercises of a composed lesson. */
const EXERCISES = 6;

/** Lessons that the composer writes, over each of its grooves in turn. */
function* composed(): Generator<Lesson> {
  const texts = Object.values(COMPOSED_LESSONS);
  for (let index = 0; index < LESSONS; index += 1) {
    const text = `title: Composed\n${texts[index % texts.length]}\n`;
    const { lesson, problems } = parseLesson(text, 'composed');
    if (!lesson) throw new Error(JSON.stringify(problems));
    const { exercises } = compose(lesson, { count: EXERCISES, seed: SEED + index });
    yield { ...lesson, exercises };
  }
}

/** Lessons of the whole grammar: every mark on every voice, as dense as it comes. */
function atRandom(): readonly Lesson[] {
  return fc.sample(fc.oneof(arbitraryLesson, arbitraryDividedLesson), { seed: SEED, numRuns: LESSONS });
}

function count(lessons: Iterable<Lesson>) {
  const found = { lessons: 0, tiles: 0, tilesWith: 0, example: '' };
  for (const lesson of lessons) {
    const staff = found.lessons % 2 === 0 ? 'compact' : 'full';
    const tiles = tilesOnPages(layOutSheet(lesson, { engraver, fonts, words: ENGLISH_SHEET, staff }));
    const collisions = tiles.map(collisionsOf).filter((pairs) => pairs.length > 0);
    found.lessons += 1;
    found.tiles += tiles.length;
    found.tilesWith += collisions.length;
    found.example ||= collisions[0]?.[0] ?? '';
  }
  return found;
}

it('counts signs that stand on each other', { timeout: 7_200_000 }, () => {
  const kinds = (process.env['SHEDBOOK_KINDS'] ?? 'composed,random').split(',');
  const found = kinds.map((kind) => ({ kind, ...count(kind === 'composed' ? composed() : atRandom()) }));
  const out = process.env['SHEDBOOK_FOUND'];
  if (out) writeFileSync(out, JSON.stringify(found));
});
