/**
 * Exact rational numbers for score time.
 *
 * Conventions: always in lowest terms, denominator positive, both parts safe integers. There is no
 * constructor from a float: score time is counted, never measured. Overflow past 2^53 is refused.
 */
export interface Fraction {
  /** Numerator, a count of parts; the sign is here. */
  readonly num: number;
  /** Denominator: how many parts make one. At least 1. */
  readonly den: number;
}

/** Zero whole notes. */
export const ZERO: Fraction = Object.freeze({ num: 0, den: 1 });

/** One whole note. */
export const ONE: Fraction = Object.freeze({ num: 1, den: 1 });

/**
 * The greatest common divisor of two whole numbers, from 0; with 0 it is the other.
 * @example greatestCommonDivisor(12, -18) // 6
 */
export function greatestCommonDivisor(a: number, b: number): number {
  let x = Math.abs(a);
  let y = Math.abs(b);
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

function requireSafe(value: number): number {
  if (!Number.isSafeInteger(value))
    throw new RangeError(`Internal error: fraction part ${value} is not exact`);
  return value;
}

/**
 * The fraction `num/den` in lowest terms.
 * @example fraction(6, 8) // { num: 3, den: 4 }
 * @throws RangeError when a part is not a safe integer or `den` is 0.
 */
export function fraction(num: number, den = 1): Fraction {
  requireSafe(num);
  requireSafe(den);
  if (den === 0) throw new RangeError('Internal error: fraction with denominator 0');
  const divisor = greatestCommonDivisor(num, den) * Math.sign(den);
  return { num: num / divisor + 0, den: den / divisor };
}

/** The sum `a + b`. @throws RangeError on overflow. */
export function add(a: Fraction, b: Fraction): Fraction {
  if (a.den === b.den) return fraction(requireSafe(a.num + b.num), a.den);
  const divisor = greatestCommonDivisor(a.den, b.den);
  const scaled = requireSafe(a.num * (b.den / divisor)) + requireSafe(b.num * (a.den / divisor));
  return fraction(requireSafe(scaled), requireSafe(a.den * (b.den / divisor)));
}

/** The difference `a − b`. @throws RangeError on overflow. */
export function subtract(a: Fraction, b: Fraction): Fraction {
  return add(a, { num: -b.num, den: b.den });
}

/** The product `a · b`. @throws RangeError on overflow. */
export function multiply(a: Fraction, b: Fraction): Fraction {
  const first = fraction(a.num, b.den);
  const second = fraction(b.num, a.den);
  return fraction(requireSafe(first.num * second.num), requireSafe(first.den * second.den));
}

/** The quotient `a ÷ b`. @throws RangeError on overflow or when `b` is 0. */
export function divide(a: Fraction, b: Fraction): Fraction {
  return multiply(a, fraction(b.den, b.num));
}

/** Negative when `a < b`, 0 when equal, positive when `a > b`. */
export function compare(a: Fraction, b: Fraction): number {
  if (a.den === b.den) return a.num - b.num;
  return subtract(a, b).num;
}

/** Whether two fractions are the same number. */
export function equals(a: Fraction, b: Fraction): boolean {
  return a.num === b.num && a.den === b.den;
}

/** The fraction as a float, for the last step towards seconds or pixels. */
export function toNumber(a: Fraction): number {
  return a.num / a.den;
}

/** Text such as `3/4`, or `2` for a whole number. */
export function formatFraction(a: Fraction): string {
  return a.den === 1 ? `${a.num}` : `${a.num}/${a.den}`;
}
