/** Samples between −0.5 and 0.5 that look like noise, the same every time: multiples of the golden ratio, squared. */
export function scattered(length: number): Float32Array {
  return Float32Array.from({ length }, (_, n) => ((n * n * 0.618_033_988_749_895) % 1) - 0.5);
}
