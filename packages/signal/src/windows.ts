/**
 * Windows and the sinc: what filters and spectra are shaped by.
 *
 * Conventions: a window is a function of the place in it, 0 at its beginning, 1 at its end; a periodic window of N
 * samples has sample n at n/N. Outside 0 to 1 a window is not defined.
 * Source: F. J. Harris, "On the Use of Windows for Harmonic Analysis with the Discrete Fourier Transform", Proceedings
 * of the IEEE 66(1), 1978: equations 27a (Hann), 32 (Blackman, its usual coefficients) and 46a (Kaiser–Bessel).
 */

/** The Hann window: 0 at both ends, 1 in the middle. */
export function hann(place: number): number {
  return 0.5 - 0.5 * Math.cos(2 * Math.PI * place);
}

/** The Blackman window: 0 at both ends, 1 in the middle, side lobes under −58 dB. */
export function blackman(place: number): number {
  return 0.42 - 0.5 * Math.cos(2 * Math.PI * place) + 0.08 * Math.cos(4 * Math.PI * place);
}

/** Modified Bessel function of the first kind and order 0, by its series; enough terms for arguments up to 30. */
function besselI0(x: number): number {
  let [sum, term] = [1, 1];
  for (let k = 1; k < 40; k += 1) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/** The Kaiser window: 1 in the middle, 1/I₀(β) at both ends. @param beta how narrow it is, 0 (a rectangle) to 30 */
export function kaiser(place: number, beta: number): number {
  const edge = 2 * place - 1;
  return besselI0(beta * Math.sqrt(1 - edge * edge)) / besselI0(beta);
}

/** sin(πx)/(πx): 1 at 0, and 0 at every other whole number. */
export function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}
