/**
 * Banks of modes: the sound of anything that rings is a sum of decaying sines.
 *
 * Conventions: `t60Seconds` is the time to fall by 60 dB; phases in radians; sines start at sample 0.
 * Source: the two-multiply resonator y[n] = 2·r·cos ω·y[n−1] − r²·y[n−2] is exact for a decaying sine
 * (J. O. Smith, Physical Audio Signal Processing, "Digital sinusoid generators").
 */
import { fallPerSample } from '@shedbook/signal';

/** One way of ringing. */
export interface Mode {
  readonly frequencyHz: number;
  /** Factor of the sine at its start. */
  readonly amplitude: number;
  /** Radians. */
  readonly phase: number;
  readonly t60Seconds: number;
}

/** A mode is computed until it has fallen by this much, in dB. */
const HEARD_DB = 84;

interface Resonator {
  readonly length: number;
  readonly feedback: number;
  readonly damping: number;
  readonly first: number;
  readonly second: number;
}

function resonator(mode: Mode, sampleRateHz: number): Resonator {
  const step = (2 * Math.PI * mode.frequencyHz) / sampleRateHz;
  const decay = fallPerSample(mode.t60Seconds, sampleRateHz);
  return {
    length: Math.ceil((mode.t60Seconds * sampleRateHz * HEARD_DB) / 60),
    feedback: 2 * decay * Math.cos(step),
    damping: decay * decay,
    first: (mode.amplitude * Math.sin(mode.phase - step)) / decay,
    second: (mode.amplitude * Math.sin(mode.phase - 2 * step)) / (decay * decay),
  };
}

const SILENT: Resonator = { length: 0, feedback: 0, damping: 0, first: 0, second: 0 };

/** Four resonators in one pass: the sum is written once, which is what takes the time. */
function addFour(out: Float32Array, length: number, four: readonly Resonator[]): void {
  const [p, q, r, s] = [four[0] ?? SILENT, four[1] ?? SILENT, four[2] ?? SILENT, four[3] ?? SILENT];
  const [pf, qf, rf, sf] = [p.feedback, q.feedback, r.feedback, s.feedback];
  const [pd, qd, rd, sd] = [p.damping, q.damping, r.damping, s.damping];
  let [p1, p2, q1, q2] = [p.first, p.second, q.first, q.second];
  let [r1, r2, s1, s2] = [r.first, r.second, s.first, s.second];
  for (let i = 0; i < length; i += 1) {
    const a = pf * p1 - pd * p2;
    const b = qf * q1 - qd * q2;
    const c = rf * r1 - rd * r2;
    const d = sf * s1 - sd * s2;
    p2 = p1;
    q2 = q1;
    r2 = r1;
    s2 = s1;
    p1 = a;
    q1 = b;
    r1 = c;
    s1 = d;
    out[i] = (out[i] as number) + (a + b + c + d);
  }
}

/** Adds modes to a buffer, from its first sample on. Modes at or above half the sample rate are left out. */
export function addModes(out: Float32Array, sampleRateHz: number, modes: readonly Mode[]): void {
  const resonators = modes
    .filter((mode) => mode.frequencyHz < sampleRateHz / 2 && mode.amplitude !== 0)
    .map((mode) => resonator(mode, sampleRateHz))
    .sort((a, b) => b.length - a.length);
  for (let i = 0; i < resonators.length; i += 4) {
    const four = resonators.slice(i, i + 4);
    addFour(out, Math.min(out.length, four[0]?.length ?? 0), four);
  }
}
