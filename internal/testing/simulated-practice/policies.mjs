/**
 * Orders of practice beside the coach. Each gives the visits of a day: an exercise by its index and minutes.
 *
 * Conventions: `state` is the policy's own memory of one student, an empty object before the first day.
 */

const TWO = 2;
const THREE = 3;
const FIVE = 5;

/** Fills the minutes with visits to what comes next. */
function fill(minutes, length, next) {
  return Array.from({ length: Math.ceil(minutes / length) }, (_, i) => ({
    exercise: next(i),
    minutes: Math.min(length, minutes - i * length),
  }));
}

/** Every policy by its name. */
export const POLICIES = {
  'top to bottom': ({ count, minutes }) => fill(minutes, TWO, (i) => i % count),
  'round and round': ({ count, minutes, state }) => {
    const from = state.from ?? 0;
    state.from = (from + Math.ceil(minutes / TWO)) % count;
    return fill(minutes, TWO, (i) => (from + i) % count);
  },
  'fixed order': ({ minutes, count, atGoal }) => {
    const open = Array.from({ length: count }, (_, i) => i).filter((i) => !atGoal(i));
    return [{ exercise: open[0] ?? 0, minutes }];
  },
  random: ({ count, minutes, random }) => fill(minutes, THREE, () => random.below(count)),
  'hardest first': ({ count, minutes, bpmOf }) => {
    const slowest = Array.from({ length: count }, (_, i) => i).sort((a, b) => bpmOf(a) - bpmOf(b));
    return fill(minutes, FIVE, (i) => slowest[i % count]);
  },
};
