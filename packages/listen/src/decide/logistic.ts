/**
 * Logistic regression of a few features, for turning scores into probabilities.
 *
 * Conventions: weights have the constant last; small, so solved by Newton's method with a penalty.
 */
export function fitLogistic(
  features: readonly Float64Array[],
  labels: readonly number[],
  options: { readonly prior: readonly number[]; readonly penalty: number },
): readonly number[] {
  const size = options.prior.length;
  let weights = [...options.prior];
  for (let round = 0; round < 12; round += 1) {
    const gradient = weights.map((w, i) => options.penalty * (w - options.prior[i]!));
    const hessian = Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (_unused, j) => (i === j ? options.penalty : 0)),
    );
    features.forEach((row, index) => {
      let logit = 0;
      for (let i = 0; i < size; i += 1) logit += weights[i]! * row[i]!;
      const p = 1 / (1 + Math.exp(-logit));
      const curvature = Math.max(1e-5, p * (1 - p));
      for (let i = 0; i < size; i += 1) {
        gradient[i] = gradient[i]! + (p - labels[index]!) * row[i]!;
        for (let j = 0; j < size; j += 1) hessian[i]![j] = hessian[i]![j]! + curvature * row[i]! * row[j]!;
      }
    });
    const step = solve(hessian, gradient);
    weights = weights.map((w, i) => w - Math.max(-2, Math.min(2, step[i]!)));
    if (step.every((s) => Math.abs(s) < 1e-4)) break;
  }
  return weights;
}

/** Solves a small symmetric system by elimination. */
function solve(matrix: readonly number[][], right: readonly number[]): readonly number[] {
  const size = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let i = 0; i < size; i += 1) {
    const pivot = rows[i]![i]! || 1e-12;
    for (let j = i + 1; j < size; j += 1) {
      const factor = rows[j]![i]! / pivot;
      for (let k = i; k <= size; k += 1) rows[j]![k] = rows[j]![k]! - factor * rows[i]![k]!;
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i -= 1) {
    let sum = rows[i]![size]!;
    for (let k = i + 1; k < size; k += 1) sum -= rows[i]![k]! * x[k]!;
    x[i] = sum / (rows[i]![i]! || 1e-12);
  }
  return x;
}
