/**
 * What every order of practice comes to with the students of the simulation, on as many processors as there are: one
 * thread takes one variant after another.
 *
 * Conventions: the students of a variant are the same under every order; tempi in quarter notes a minute.
 */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parentPort, Worker } from 'node:worker_threads';
import { coachPlan } from '../internal/testing/simulated-practice/coached.mjs';
import { OTHERS, practise } from '../internal/testing/simulated-practice/simulate.mjs';
import { VARIANTS } from '../internal/testing/simulated-practice/variants.data.mjs';
import { sheetNamed } from '../internal/testing/stories/lessons.mjs';

/**
 * The tempi that the students of one variant hold, by order of practice.
 * @param {typeof VARIANTS[number]} variant
 * @param {number} students
 */
function tempiOf({ traits }, students) {
  const lesson = sheetNamed(traits.sheet);
  return Object.fromEntries(
    Object.entries({ coach: coachPlan, ...OTHERS }).map(([order, makePlan]) => [
      order,
      Array.from({ length: students }, (_, seed) => practise({ lesson, traits, seed, makePlan }).bpm),
    ]),
  );
}

parentPort?.on('message', ({ index, students }) => {
  const [variant] = VARIANTS.slice(index);
  if (variant) parentPort?.postMessage({ index, tempi: tempiOf(variant, students) });
});

/**
 * The tempi of every variant, in order.
 * @param {number} students
 * @param {(variant: typeof VARIANTS[number], tempi: ReturnType<typeof tempiOf>) => void} told is told of each as it is done
 */
export async function simulate(students, told = () => undefined) {
  const done = VARIANTS.map((variant) => ({
    variant,
    tempi: /** @type {ReturnType<typeof tempiOf>} */ ({}),
  }));
  let next = 0;
  const work = () =>
    new Promise((resolve, reject) => {
      const worker = new Worker(fileURLToPath(import.meta.url));
      const give = () => {
        if (next >= VARIANTS.length) return resolve(worker.terminate());
        worker.postMessage({ index: next, students });
        next += 1;
      };
      worker.on('error', reject);
      worker.on('message', ({ index, tempi }) => {
        const [row] = done.slice(index);
        if (row) Object.assign(row, { tempi });
        if (row) told(row.variant, tempi);
        give();
      });
      give();
    });
  await Promise.all(Array.from({ length: Math.min(VARIANTS.length, availableParallelism()) }, work));
  return done;
}
