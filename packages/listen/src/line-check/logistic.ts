/**
 * What must be added to evidence so that it tells two kinds of events apart: a logistic regression beside what is known already,
 * drawn to nothing by a ridge, since a line check is short.
 *
 * Conventions: rows of numbers in one array; natural logarithms.
 * Sources: Newton's method with steps halved until they gain (J. Nocedal and S. J. Wright, Numerical Optimization, 2nd ed. 2006,
 * ch. 3); systems by Cholesky's factors (G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, algorithm 4.2.1).
 */
import { sigmoid } from '@shedbook/signal';
import { along } from '../detect/known-kit.ts';

/** Events of both kinds. */
export interface LabelledRows {
  /** Numbers in a row. */
  readonly width: number;
  readonly facts: Float64Array;
  /** The evidence before anything is added, one logit a row. */
  readonly before: Float64Array;
  /** 1 for each row of the first kind. */
  readonly isThere: Uint8Array;
}

const ROUNDS = 12;
const HALVINGS = 6;
/** A round that changes no number by more than this was the last. */
const SETTLED = 1e-3;

/** Solves a symmetric positive definite system in place. @param matrix row by row, its lower triangle */
function solveInPlace(matrix: Float64Array, right: Float64Array): Float64Array {
  const size = right.length;
  for (let r = 0; r < size; r += 1) {
    for (let c = 0; c <= r; c += 1) {
      let sum = matrix[r * size + c]!;
      for (let k = 0; k < c; k += 1) sum -= matrix[r * size + k]! * matrix[c * size + k]!;
      matrix[r * size + c] = r === c ? Math.sqrt(sum) : sum / matrix[c * size + c]!;
    }
  }
  for (let r = 0; r < size; r += 1) {
    for (let k = 0; k < r; k += 1) right[r]! -= matrix[r * size + k]! * right[k]!;
    right[r]! /= matrix[r * size + r]!;
  }
  for (let r = size - 1; r >= 0; r -= 1) {
    for (let k = r + 1; k < size; k += 1) right[r]! -= matrix[k * size + r]! * right[k]!;
    right[r]! /= matrix[r * size + r]!;
  }
  return right;
}

function logitOf({ before, facts, width }: LabelledRows, slope: Float64Array, row: number): number {
  return before[row]! + along(slope, facts, row * width);
}

/** Sum over all rows of the logarithm of how likely their kind was not: less is better. */
export function lossOf(rows: LabelledRows, slope: Float64Array): number {
  let loss = 0;
  rows.isThere.forEach((isThere, row) => {
    const logit = logitOf(rows, slope, row);
    const against = isThere === 1 ? -logit : logit;
    loss += against > 0 ? against + Math.log1p(Math.exp(-against)) : Math.log1p(Math.exp(against));
  });
  return loss;
}

/** Newton's step from a slope. */
function stepFrom(rows: LabelledRows, slope: Float64Array, ridge: number): Float64Array {
  const { width, facts, isThere } = rows;
  const matrix = new Float64Array(width * width);
  const right = slope.map((value) => -ridge * value);
  for (let i = 0; i < width; i += 1) matrix[i * width + i] = ridge;
  for (let row = 0; row < isThere.length; row += 1) {
    const at = row * width;
    const struck = sigmoid(logitOf(rows, slope, row));
    const weight = struck * (1 - struck);
    for (let r = 0; r < width; r += 1) {
      const fact = facts[at + r]!;
      right[r]! += (isThere[row]! - struck) * fact;
      const share = weight * fact;
      for (let c = 0; c <= r; c += 1) matrix[r * width + c]! += share * facts[at + c]!;
    }
  }
  return solveInPlace(matrix, right);
}

/** The slope that tells the rows best, less what the ridge takes. @param ridge over 0 */
export function fitSlope(rows: LabelledRows, ridge: number): Float64Array {
  let slope = new Float64Array(rows.width);
  const costOf = (one: Float64Array) => lossOf(rows, one) + (ridge / 2) * along(one, one);
  let cost = costOf(slope);
  for (let round = 0; round < ROUNDS; round += 1) {
    const step = stepFrom(rows, slope, ridge);
    let share = 1;
    let next = slope.map((value, i) => value + step[i]!);
    for (let i = 0; i < HALVINGS && costOf(next) > cost; i += 1) {
      share /= 2;
      next = slope.map((value, k) => value + share * step[k]!);
    }
    const costNext = costOf(next);
    if (!(costNext < cost)) break;
    slope = next;
    cost = costNext;
    if (step.every((value) => Math.abs(share * value) < SETTLED)) break;
  }
  return slope;
}
