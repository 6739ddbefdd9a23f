/** How much later something sounds than it was asked for. */

/** Longest delay that is looked for, in samples: encoders of AAC add about 1,000 to 3,000. */
const LONGEST = 4096;
/** Samples that are compared: a stroke and some of its sound. */
const COMPARED = 4096;

/** Place of the highest sample. */
function highest(samples: Float32Array): number {
  let at = 0;
  samples.forEach((sample, index) => {
    if (Math.abs(sample) > Math.abs(samples[at] as number)) at = index;
  });
  return at;
}

/** How alike two sounds are, one of them so many samples later; grows with both. */
function likeness(asked: Float32Array, came: Float32Array, from: number, delay: number): number {
  let sum = 0;
  for (let i = Math.max(0, from, -delay); i < Math.min(asked.length, from + COMPARED); i += 1)
    sum += (asked[i] as number) * (came[i + delay] ?? 0);
  return sum;
}

/**
 * By how many samples a sound came later than it was asked for; below 0 where it came sooner; 0 where nothing sounds.
 * Source: the delay at which two signals correlate most (common practice).
 */
export function delayOf(asked: Float32Array, came: Float32Array): number {
  const from = highest(asked) - COMPARED / 2;
  let [best, most] = [0, likeness(asked, came, from, 0)];
  for (let delay = -LONGEST; delay <= LONGEST; delay += 1) {
    const value = likeness(asked, came, from, delay);
    if (value > most) [best, most] = [delay, value];
  }
  return best;
}
