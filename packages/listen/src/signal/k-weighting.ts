/**
 * The weight of each frequency in loudness.
 *
 * Source: ITU-R BS.1770-4 Annex 1: a high shelf and a high-pass, by the analogue parameters from which libebur128 (MIT)
 * derives the filters of any sample rate; here their power response.
 */

const SHELF = {
  hz: 1681.974450955533,
  db: 3.999843853973347,
  q: 0.7071752369554196,
  tilt: 0.4996667741545416,
};
const HIGH_PASS = { hz: 38.13547087602444, q: 0.5003270373238773 };

/** Gain of power at a frequency in Hz. */
export function kWeight(hz: number): number {
  const high = 10 ** (SHELF.db / 20);
  const x = hz / SHELF.hz;
  const shelf =
    ((1 - high * x * x) ** 2 + ((high ** SHELF.tilt * x) / SHELF.q) ** 2) /
    ((1 - x * x) ** 2 + (x / SHELF.q) ** 2);
  const y = hz / HIGH_PASS.hz;
  return (shelf * y ** 4) / ((1 - y * y) ** 2 + (y / HIGH_PASS.q) ** 2);
}
