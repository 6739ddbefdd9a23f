/**
 * Ridge regression with one Gram matrix for many targets, and its pieces by fold for cross-fitting.
 *
 * Conventions: rows are samples; weights from 0; the last feature should be the constant 1.
 * Source: A. E. Hoerl and R. W. Kennard, "Ridge Regression", Technometrics 12(1), 1970; solved by Cholesky.
 */

/** Sums over samples: what ridge regression needs to know of them. */
export interface Moments {
  readonly size: number;
  /** Lower triangle, row by row in a full square. */
  readonly gram: Float64Array;
  /** One column a target. */
  readonly cross: readonly Float64Array[];
}

/** Empty sums for `size` features and `targets` targets. */
export function emptyMoments(size: number, targets: number): Moments {
  return {
    size,
    gram: new Float64Array(size * size),
    cross: Array.from({ length: targets }, () => new Float64Array(size)),
  };
}

/** Adds one sample. */
export function addSample(moments: Moments, features: Float64Array, targets: readonly number[]): void {
  const { size, gram, cross } = moments;
  for (let i = 0; i < size; i += 1) {
    const value = features[i]!;
    if (value === 0) continue;
    for (let j = 0; j <= i; j += 1) gram[i * size + j] = gram[i * size + j]! + value * features[j]!;
    for (let t = 0; t < targets.length; t += 1) cross[t]![i] = cross[t]![i]! + value * targets[t]!;
  }
}

/** The sums of `a` with weight `factor` times those of `b` added. */
export function combine(a: Moments, b: Moments, factor: number): Moments {
  return {
    size: a.size,
    gram: a.gram.map((value, i) => value + factor * b.gram[i]!),
    cross: a.cross.map((column, t) => column.map((value, i) => value + factor * b.cross[t]![i]!)),
  };
}

/** The Cholesky factor of the Gram matrix with `penalty` on its diagonal (the constant's too). */
function factorise({ size, gram }: Moments, penalty: number): Float64Array {
  const lower = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = gram[i * size + j]! + (i === j ? penalty : 0);
      for (let k = 0; k < j; k += 1) sum -= lower[i * size + k]! * lower[j * size + k]!;
      lower[i * size + j] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / lower[j * size + j]!;
    }
  }
  return lower;
}

/** The weights of every target. */
export function solveRidge(moments: Moments, penalty: number): readonly Float64Array[] {
  const { size } = moments;
  const lower = factorise(moments, penalty);
  return moments.cross.map((column) => {
    const x = Float64Array.from(column);
    for (let i = 0; i < size; i += 1) {
      for (let k = 0; k < i; k += 1) x[i] = x[i]! - lower[i * size + k]! * x[k]!;
      x[i] = x[i]! / lower[i * size + i]!;
    }
    for (let i = size - 1; i >= 0; i -= 1) {
      for (let k = i + 1; k < size; k += 1) x[i] = x[i]! - lower[k * size + i]! * x[k]!;
      x[i] = x[i]! / lower[i * size + i]!;
    }
    return x;
  });
}
