/**
 * Small systems of linear equations.
 *
 * Source: Gaussian elimination with partial pivoting (Golub & Van Loan 2013, Matrix Computations, algorithm 3.4.1).
 */

/** Sum of the products of two lists of equal length. */
export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** The x of `matrix · x = right`; the matrix must be regular. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i] as number]);
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) {
      if (Math.abs(rows[i]?.[k] as number) > Math.abs(rows[pivot]?.[k] as number)) pivot = i;
    }
    [rows[k], rows[pivot]] = [rows[pivot] as number[], rows[k] as number[]];
    const top = rows[k] as number[];
    for (let i = k + 1; i < n; i += 1) {
      const row = rows[i] as number[];
      const factor = (row[k] as number) / (top[k] as number);
      if (factor === 0) continue;
      for (let j = k; j <= n; j += 1) row[j] = (row[j] as number) - factor * (top[j] as number);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    const row = rows[i] as number[];
    let sum = row[n] as number;
    for (let j = i + 1; j < n; j += 1) sum -= (row[j] as number) * (x[j] as number);
    x[i] = sum / (row[i] as number);
  }
  return x;
}
