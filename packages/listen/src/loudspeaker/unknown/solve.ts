/** Small systems of equations. Rows of a symmetric matrix without rows that are nothing. */

/** The inverse of a symmetric, positive definite matrix, by elimination. */
export function inverse(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const { length } = matrix;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (const [i, pivot] of rows.entries()) {
    const by = pivot[i]!;
    for (let k = 0; k < pivot.length; k += 1) pivot[k] = pivot[k]! / by;
    for (const [j, row] of rows.entries()) {
      const factor = j === i ? 0 : row[i]!;
      for (let k = 0; factor !== 0 && k < row.length; k += 1) row[k] = row[k]! - factor * pivot[k]!;
    }
  }
  return rows.map((row) => row.slice(length));
}

/** All sums of products of two columns. */
export function gram(rows: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const columns = rows[0] ?? [];
  return columns.map((_, a) => columns.map((__, b) => rows.reduce((sum, row) => sum + row[a]! * row[b]!, 0)));
}

const ROUNDS = 200;

/**
 * Amounts of columns, none under 0, that come nearest to some values.
 * Source: coordinate descent on the normal equations (V. Franc, V. Hlaváč and M. Navara, CAIP 2005).
 */
export function nonNegative(
  rows: readonly (readonly number[])[],
  values: readonly number[],
): readonly number[] {
  const products = gram(rows);
  const right = products.map((_, a) => rows.reduce((sum, row, i) => sum + row[a]! * values[i]!, 0));
  const amounts = right.map(() => 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [a, own] of products.entries()) {
      const others = own.reduce((sum, product, b) => (b === a ? sum : sum + product * amounts[b]!), 0);
      amounts[a] = own[a]! > 0 ? Math.max(0, (right[a]! - others) / own[a]!) : 0;
    }
  }
  return amounts;
}
