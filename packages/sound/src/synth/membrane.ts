/**
 * The modes of an ideal circular membrane.
 *
 * Conventions: m counts nodal diameters, n nodal circles (from 1); positions are fractions of the radius,
 * 0 the centre, 1 the rim.
 * Source: T. D. Rossing and N. H. Fletcher, The Physics of Musical Instruments, ch. 3: the frequency of mode
 * (m, n) is proportional to the n-th zero of the Bessel function J_m.
 */

/** One mode of the membrane. */
export interface MembraneMode {
  /** Number of nodal diameters. */
  readonly m: number;
  /** Number of nodal circles, from 1. */
  readonly n: number;
  /** The n-th zero of J_m: its frequency as a ratio to that of the others. */
  readonly zero: number;
  /** Frequency relative to mode (0, 1). */
  readonly ratio: number;
}

const STEPS = 64;

/**
 * The Bessel function J_m(x) of whole order m ≥ 0, by Bessel's integral.
 * The trapezoid rule is exact to rounding here, since the integrand is periodic (|x| up to about 40).
 */
export function besselJ(m: number, x: number): number {
  let sum = 0;
  for (let i = 0; i < STEPS; i += 1) {
    const angle = (2 * Math.PI * i) / STEPS;
    sum += Math.cos(m * angle - x * Math.sin(angle));
  }
  return sum / STEPS;
}

function bisect(m: number, below: number, above: number): number {
  let [low, high] = [below, above];
  const rising = besselJ(m, high) > 0;
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (besselJ(m, middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

function zerosUpTo(m: number, highest: number): readonly number[] {
  const zeros: number[] = [];
  const step = 0.25;
  for (let x = m + 1; x < highest; x += step) {
    if (besselJ(m, x) > 0 !== besselJ(m, x + step) > 0) zeros.push(bisect(m, x, x + step));
  }
  return zeros.filter((zero) => zero <= highest);
}

const HIGHEST_RATIO = 9;

function computeModes(): readonly MembraneMode[] {
  const lowest = bisect(0, 2, 3);
  const modes: MembraneMode[] = [];
  for (let m = 0; m + 1 < HIGHEST_RATIO * lowest; m += 1) {
    zerosUpTo(m, HIGHEST_RATIO * lowest).forEach((zero, i) => {
      modes.push({ m, n: i + 1, zero, ratio: zero / lowest });
    });
  }
  return modes.sort((a, b) => a.ratio - b.ratio);
}

let known: readonly MembraneMode[] | null = null;

/** Every mode up to nine times the lowest frequency, in order of frequency. */
export function membraneModes(): readonly MembraneMode[] {
  known ??= computeModes();
  return known;
}

/** How strongly a stroke at `position` (0 centre … 1 rim) excites a mode: the height of its shape there. */
export function strikeWeight(mode: MembraneMode, position: number): number {
  return besselJ(mode.m, mode.zero * position);
}
