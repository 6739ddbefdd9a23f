/**
 * Heads over a shell: the modes of a struck membrane, heard through a contact.
 *
 * Conventions: frequencies in hertz at rest; a hard stroke stretches the head and starts a little sharp
 * (`glide`), which is one bend of time for all modes. Positions are fractions of the radius.
 * Source: Bessel ratios (synth/membrane.ts); the two coupled modes (0,1) and (1,1) of a double-headed drum and
 * the quick decay of modes that move air as a whole: Rossing and Fletcher, ch. 18.
 */

import { type Random, seededRandom } from '@shedbook/core';
import { dbToGain } from '@shedbook/signal';
import { type Contact, contactGain, contactSeconds } from '../synth/contact.ts';
import { type Curve, curveAt } from '../synth/curve.ts';
import { hermite } from '../synth/interpolate.ts';
import { membraneModes, strikeWeight } from '../synth/membrane.ts';
import { addModes, type Mode } from '../synth/modes.ts';

/** A drum, as its struck head hears it. */
export interface Head {
  /** Mode (0,1) of the head that is struck. */
  readonly lowestHz: number;
  /** Its partner, in which the two heads move against each other, and its level in dB. */
  readonly partnerHz: number;
  readonly partnerDb: number;
  /** Highest ratio to the lowest mode that is heard. */
  readonly highestRatio: number;
  /** Where the stroke lands, 0 centre … 1 rim, and by how much that differs from stroke to stroke. */
  readonly position: number;
  /** By how much that differs from stroke to stroke, as a fraction of the radius. */
  readonly wander: number;
  /** Ringing times over frequency for modes with nodal diameters, and the factor for those without. */
  readonly t60Seconds: Curve;
  /** Factor of the ringing times of modes without nodal diameters. */
  readonly breathing: number;
  readonly contact: Contact;
  /** How much sharper a plain stroke starts, as a part of the frequency, and how fast that goes. */
  readonly glide: number;
  readonly glideSeconds: number;
}

/** The modes that one stroke excites. */
export function headModes(head: Head, driveDb: number, random: Random): readonly Mode[] {
  const position = Math.min(0.95, Math.abs(head.position + head.wander * (2 * random.next() - 1)));
  const seconds = contactSeconds(head.contact, driveDb);
  const ring = (hz: number, m: number) => curveAt(head.t60Seconds, hz) * (m === 0 ? head.breathing : 1);
  const modes: Mode[] = [];
  for (const mode of membraneModes()) {
    if (mode.ratio > head.highestRatio) break;
    const frequencyHz = head.lowestHz * mode.ratio;
    const radiated = mode.m === 0 ? 1 : 0.8 / Math.sqrt(mode.m);
    const facing = mode.m === 0 ? 1 : 0.75 + 0.25 * Math.cos(Math.PI * random.next());
    const amplitude = strikeWeight(mode, position) * contactGain(seconds, frequencyHz) * radiated * facing;
    modes.push({ frequencyHz, amplitude, phase: 0, t60Seconds: ring(frequencyHz, mode.m) });
  }
  const amplitude = dbToGain(head.partnerDb) * contactGain(seconds, head.partnerHz);
  modes.push({ frequencyHz: head.partnerHz, amplitude, phase: 0, t60Seconds: ring(head.partnerHz, 0) });
  return modes;
}

/** A stroke on a head, `seconds` long; the same take strikes the same place at every drive. */
export function strikeHead(
  head: Head,
  stroke: { readonly driveDb: number; readonly seconds: number; readonly seed: string },
  rate: number,
): Float32Array {
  const straight = new Float32Array(Math.ceil(stroke.seconds * rate * 1.1));
  addModes(straight, rate, headModes(head, stroke.driveDb, seededRandom(stroke.seed)));
  const glide = Math.min(0.09, head.glide * 10 ** (stroke.driveDb / 20));
  const bent = bendTime(straight, Math.ceil(stroke.seconds * rate), glide, head.glideSeconds * rate);
  softenStart(bent, contactSeconds(head.contact, stroke.driveDb) * rate * 0.5);
  return bent;
}

/** Reads a buffer faster at first: by the part `glide`, dying away over `settle` samples. */
function bendTime(from: Float32Array, length: number, glide: number, settle: number): Float32Array {
  const bent = new Float32Array(length);
  for (let i = 0; i < length; i += 1) {
    const at = i + glide * settle * (1 - Math.exp(-i / settle));
    const before = Math.floor(at);
    if (before + 2 >= from.length) break;
    bent[i] = hermite(from, before, at - before);
  }
  return bent;
}

/** A head takes as long to be set moving as the contact lasts. */
function softenStart(buffer: Float32Array, samples: number): void {
  for (let i = 0; i < samples && i < buffer.length; i += 1) {
    buffer[i] = (buffer[i] as number) * Math.sin(((i + 1) / (samples + 1)) * (Math.PI / 2)) ** 2;
  }
}
