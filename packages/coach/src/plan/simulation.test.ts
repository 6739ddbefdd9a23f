import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { lessonOf } from '../../../../internal/testing/loops.ts';
import { coachPlan } from '../../../../internal/testing/simulated-practice/coached.mjs';
import { OTHERS, practise, summarise } from '../../../../internal/testing/simulated-practice/simulate.mjs';
import { VARIANTS } from '../../../../internal/testing/simulated-practice/variants.data.mjs';

/** The bench has two hundred of each kind; these are enough to see that nothing has come apart. */
const STUDENTS = 10;

const DEMO = fileURLToPath(new URL('../../../../demo/first-swing.lesson.yaml', import.meta.url));
const lesson = lessonOf(readFileSync(DEMO, 'utf8'));

function meanOf(makePlan: unknown, traits: unknown): number {
  const held = Array.from({ length: STUDENTS }, (_, seed): number => {
    return practise({ lesson, traits, seed, makePlan }).bpm;
  });
  return summarise(held).mean;
}

// What is assumed of the students, and from where: internal/testing/simulated-practice/ASSUMPTIONS.md.
it.each(['base', 'plateaus hold', 'misses weeks', 'easier is better', 'harder is better', 'ten minutes'])(
  '[CH45] a page is held faster after eight weeks with the plan than in any plain order: %s',
  (name) => {
    const traits = VARIANTS.find((variant: { readonly name: string }) => variant.name === name)?.traits;
    const coach = meanOf(coachPlan, traits);
    const top = meanOf(OTHERS['top to bottom'], traits);
    for (const order of ['fixed order', 'random', 'hardest first']) {
      expect(coach, order).toBeGreaterThanOrEqual(meanOf(OTHERS[order], traits));
    }
    // The margin is over the order that beat the plan before, in quarter notes a minute.
    expect(coach).toBeGreaterThan(top + 2);
  },
  60_000,
);
