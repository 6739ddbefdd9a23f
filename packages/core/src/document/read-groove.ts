/** Reading the groove of a lesson: its parts, its lead voice, its balance, limbs and layers. */
import { DYNAMIC_LEVEL_DB } from '../kit/dynamics.ts';
import { isVoice, type Limb, TIME_VOICES, VOICE_FACTS, VOICES, type Voice } from '../kit/voice.ts';
import { defaultBalance, defaultGroove, defaultLayers, FEATHERED_DB } from '../lesson/defaults.ts';
import type { GroovePart, Layer } from '../lesson/lesson.ts';
import { didYouMean, valueFact } from '../lesson/value-fact.ts';
import type { Meter } from '../rhythm/meter.ts';
import { LeadDb } from '../units.ts';
import type { Report } from './fault.ts';
import { nearest } from './nearest.ts';
import { readPattern } from './read-pattern.ts';
import type { RawLesson } from './schema.ts';

type RawLevel = NonNullable<NonNullable<RawLesson['balance']>[Voice]>;
type ByVoice<T> = Readonly<Partial<Record<Voice, T | undefined>>>;

function entries<T>(byVoice: ByVoice<T> | undefined): readonly (readonly [Voice, T])[] {
  return Object.entries(byVoice ?? {}).flatMap(([voice, value]) =>
    value === undefined || !isVoice(voice) ? [] : [[voice, value as T] as const],
  );
}

/** Parts in the order of the file; the default groove when the lesson has none. */
export function readGroove(
  raw: RawLesson['groove'],
  meter: Meter | null,
  report: Report,
): readonly GroovePart[] {
  if (!raw) return meter ? defaultGroove(meter) : [];
  return entries(raw).flatMap(([voice, part]) => {
    const path = typeof part === 'string' ? ['groove', voice] : ['groove', voice, 'pattern'];
    const text = typeof part === 'string' ? part : part.pattern;
    const pattern = readPattern(text, voice, meter, path, report);
    return pattern ? [{ voice, pattern }] : [];
  });
}

/** What carries the time where exercises are played without a groove: as each of them is written, voice by voice. */
function timeOfExercises({ exercises, comping }: RawLesson): Voice | undefined {
  const written = (exercises ?? []).flatMap((each) => {
    const pattern = typeof each === 'object' ? each.pattern : each;
    return typeof pattern === 'object' ? Object.keys(pattern) : [comping];
  });
  return TIME_VOICES.find((voice) => written.includes(voice));
}

/** The lead voice: as named, else the groove's first; without a groove the one that carries time in the exercises. */
export function readLead(raw: RawLesson, groove: readonly GroovePart[], report: Report): Voice {
  const first = groove[0]?.voice ?? timeOfExercises(raw) ?? 'ride';
  if (!raw.lead) return first;
  if (!raw.groove || raw.groove[raw.lead] || entries(raw.groove).length === 0) return raw.lead;
  report({
    code: 'lead-not-in-groove',
    path: ['lead'],
    found: valueFact(raw.lead),
    expected: { fact: 'voice-of-groove', voices: Object.keys(raw.groove) },
  });
  return first;
}

function levelDb(level: RawLevel): number {
  if (typeof level === 'number') return level;
  return level === 'feathered' ? FEATHERED_DB : DYNAMIC_LEVEL_DB[level];
}

type Balance = Readonly<Record<Voice, LeadDb>>;
type Levels = readonly (readonly [Voice, RawLevel])[];

/** Levels as written, those of the groove first, those that override them after. */
function writtenLevels(raw: RawLesson): Levels {
  const inGroove = entries(raw.groove).flatMap(([voice, part]) =>
    typeof part === 'string' || part.level === undefined ? [] : [[voice, part.level] as const],
  );
  return [...inGroove, ...entries(raw.balance)];
}

/** Every voice's level; levels in the file count from what the groove gives the lead voice, else the default holds. */
function balanceFrom(levels: Levels, lead: Voice, zero: number): Balance {
  const written = new Map(levels.map(([voice, level]) => [voice, levelDb(level)]));
  const fallback = defaultBalance(lead);
  const level = (voice: Voice) => {
    const given = written.get(voice);
    return LeadDb(given === undefined ? fallback[voice] - fallback[lead] : given - zero);
  };
  return Object.fromEntries(VOICES.map((voice) => [voice, level(voice)])) as Record<Voice, LeadDb>;
}

/** Level of every voice in the groove and, where the file says otherwise, in exercises. */
export function readBalances(raw: RawLesson, lead: Voice) {
  const inGroove = writtenLevels(raw);
  const ofLead = inGroove.findLast(([voice]) => voice === lead);
  const zero = ofLead ? levelDb(ofLead[1]) : 0;
  return {
    balance: balanceFrom(inGroove, lead, zero),
    exerciseBalance: balanceFrom([...inGroove, ...entries(raw.exerciseBalance)], lead, zero),
  };
}

/** Limb of every voice. */
export function readLimbs(raw: RawLesson): Readonly<Record<Voice, Limb>> {
  const limb = (voice: Voice) => raw.limbs?.[voice] ?? VOICE_FACTS[voice].limb;
  return Object.fromEntries(VOICES.map((voice) => [voice, limb(voice)])) as Record<Voice, Limb>;
}

function readJoins(
  name: string,
  voices: readonly string[],
  path: readonly (string | number)[],
  report: Report,
) {
  const known = [...voices, 'pattern'];
  if (known.includes(name)) return [name as Voice | 'pattern'];
  const near = nearest(name, known);
  report({
    code: 'unknown-layer',
    path,
    found: valueFact(name),
    expected: { fact: 'one-of', words: known },
    repair: didYouMean(near),
  });
  return [];
}

/** Layers as written, with what they leave out joining last; the default order when the lesson has none. */
export function readLayers(
  { groove: written, layers: raw }: RawLesson,
  groove: readonly GroovePart[],
  lead: Voice,
  report: Report,
): readonly Layer[] {
  const fallback = defaultLayers(groove, lead);
  if (!raw) return fallback;
  const voices = written ? Object.keys(written) : groove.map((part) => part.voice);
  const layers = raw.flatMap((layer, index): Layer[] => {
    if (layer === undefined) return [];
    const names = typeof layer === 'string' ? [layer] : layer;
    const joins = names.flatMap((name, i) =>
      readJoins(name, voices, typeof layer === 'string' ? ['layers', index] : ['layers', index, i], report),
    );
    return joins.length > 0 ? [{ joins }] : [];
  });
  const there = new Set(layers.flatMap((layer) => layer.joins));
  return [...layers, ...fallback.filter((layer) => layer.joins.some((join) => !there.has(join)))];
}
