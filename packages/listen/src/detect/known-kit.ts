/**
 * A kit in its room on one device, as a line check told it: what must be added to the network's evidence there.
 *
 * Conventions: evidence as logits; a slope is added to the evidence of its voice, times the numbers of `factsOf`. It was learnt
 * from what one set of weights says and means nothing with another; with it goes the mark of those weights. A quick look knows
 * little of the future and has slopes of its own.
 */
import { textMark, type Voice } from '@shedbook/core';
import { HEARD_COUNT, HEARD_VOICES, type HeardVoice } from '../network/heard-voices.data.ts';
import { DESCRIPTION } from '../network/network.ts';
import { WEIGHTS } from '../network/weights.data.ts';
import type { HeardEvent } from './events.ts';

/** Numbers that a slope is of. */
export const FACTS_OF_EVENT = HEARD_COUNT + DESCRIPTION + 1;

/** What is added to the evidence for a voice, by a look with hindsight and by a quick one: logits a unit of each fact. */
export interface VoiceSlopes {
  /** FACTS_OF_EVENT numbers. */
  readonly patient: readonly number[];
  /** FACTS_OF_EVENT numbers. */
  readonly quick: readonly number[];
}

/** What is known of a kit. Plain data, to be kept as JSON. */
export interface KnownKit {
  /** As the person calls it. */
  readonly name: string;
  /** The mark of the weights that it was learnt with. */
  readonly weights: string;
  readonly slopes: Readonly<Partial<Record<HeardVoice, VoiceSlopes>>>;
}

/** Presence counts within these bounds, and so many logits are one unit beside a description. */
const LIMIT = 8;
const LOGIT_UNIT = 3;

function within(logit: number): number {
  return Math.max(-LIMIT, Math.min(LIMIT, logit));
}

/** What an event says, as the slopes read it: evidence of every voice, its description, and 1. */
export function factsOf({ presence, description }: HeardEvent): Float64Array {
  const facts = new Float64Array(FACTS_OF_EVENT);
  presence.forEach((logit, voice) => {
    facts[voice] = within(logit) / LOGIT_UNIT;
  });
  facts.set(description, HEARD_COUNT);
  facts[FACTS_OF_EVENT - 1] = 1;
  return facts;
}

/** The evidence of a voice that a slope is added to. */
export function evidenceBefore({ presence }: HeardEvent, output: number): number {
  return within(presence[output]!);
}

/** What a slope says of the facts of an event. */
export function along(slope: ArrayLike<number>, facts: Float64Array, from = 0): number {
  let sum = 0;
  for (let i = 0; i < slope.length; i += 1) sum += slope[i]! * facts[from + i]!;
  return sum;
}

/** An event as it is heard by whoever knows the kit. @param look with hindsight, or quick */
export function heardOn(kit: KnownKit, event: HeardEvent, look: keyof VoiceSlopes): HeardEvent {
  const facts = factsOf(event);
  const presence = event.presence.slice();
  HEARD_VOICES.forEach((voice, output) => {
    const slopes = kit.slopes[voice];
    if (slopes) presence[output] = evidenceBefore(event, output) + along(slopes[look], facts);
  });
  return { ...event, presence };
}

let mark: string | null = null;

/** The mark of the shipped weights. */
export function weightsMark(): string {
  mark ??= textMark(WEIGHTS);
  return mark;
}

/** Whether a kit was learnt with the weights that hear now. */
export function isOfTheseWeights({ weights }: Pick<KnownKit, 'weights'>): boolean {
  return weights === weightsMark();
}

/** No slope of a kit comes near this. */
const MOST = 1000;

function isSlope(value: unknown): value is readonly number[] {
  const isNumber = (one: unknown) => typeof one === 'number' && Math.abs(one) <= MOST;
  return Array.isArray(value) && value.length === FACTS_OF_EVENT && value.every(isNumber);
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A kit as it was kept, of whatever came back; null where it is none. */
export function readKnownKit(value: unknown): KnownKit | null {
  if (!isObject(value) || !isObject(value.slopes)) return null;
  const { name, weights } = value;
  if (typeof name !== 'string' || typeof weights !== 'string') return null;
  const slopes = Object.entries(value.slopes).map(([voice, own]) => {
    const isKnown = HEARD_VOICES.some((one) => one === voice && one !== 'click');
    if (!isKnown || !isObject(own) || !isSlope(own.patient) || !isSlope(own.quick)) return null;
    return [voice, { patient: own.patient, quick: own.quick }] as const;
  });
  if (slopes.some((one) => one === null)) return null;
  return { name, weights, slopes: Object.fromEntries(slopes.flatMap((one) => (one ? [one] : []))) };
}

/** A kit as it may be heard with: one that was learnt with other weights means nothing. */
export function kitInUse(kit: KnownKit | undefined): KnownKit | undefined {
  return kit && isOfTheseWeights(kit) ? kit : undefined;
}

/** The voices that a line check taught. */
export function voicesKnown({ slopes }: KnownKit): readonly Voice[] {
  return HEARD_VOICES.flatMap((voice) => (voice !== 'click' && slopes[voice] ? [voice] : []));
}
