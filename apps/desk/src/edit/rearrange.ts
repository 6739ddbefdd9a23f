/**
 * Patterns rearranged: backwards, moved by a slot, put on another voice; and beats and bars taken out and put in.
 *
 * Conventions: bars, beats and slots count from 0. Hands go with their strokes; what is said of single bars and beats
 * (dynamics, texts, a fill, repeats) stays at its place where all bars are changed, and goes with its bar where bars
 * come or go.
 */
import {
  cell,
  type DynamicSign,
  type HandedBars,
  type HandedSlot,
  type Hands,
  handedParts,
  handSlots,
  markFor,
  SILENT_SLOT,
  VOICE_FACTS,
  type Voice,
  withinItsBars,
  withoutSlots,
} from '@shedbook/core';
import { withBar, withoutBar } from './bars.ts';
import type { Unnumbered } from './exercises.ts';
import type { SlotPlace } from './strokes.ts';

/** What is taken at once: a beat, a bar, or whole exercises. */
export type Unit = 'beat' | 'bar' | 'exercise';

/** A stretch of a pattern. */
export interface Stretch {
  readonly unit: Unit;
  readonly place: Pick<SlotPlace, 'bar' | 'beat'>;
}

/** What one voice of a snippet plays. */
interface SnippetPart {
  readonly voice: Voice;
  /** Texts of cells, bar by bar. */
  readonly bars: readonly (readonly string[])[];
  /** One hand for each stroke; left out where none are written. */
  readonly hands?: Hands;
}

/** What is said of a bar beside its notes. */
interface SaidOfBar {
  readonly dynamics: readonly DynamicSign[];
  readonly above: string | null;
  readonly below: string | null;
}

/** What every voice of an exercise plays in a beat or a bar, and what is said of the bar. */
export interface Snippet {
  readonly unit: 'beat' | 'bar';
  readonly parts: readonly SnippetPart[];
  readonly said?: SaidOfBar;
}

type Beats = HandedBars[number];

function isIn({ unit, place }: Stretch, bar: number, beat: number): boolean {
  if (unit === 'exercise') return true;
  return bar === place.bar && (unit === 'bar' || beat === place.beat);
}

/** Beats of a stretch in another form, in order; all others as they are. */
function withBeats(bars: HandedBars, stretch: Stretch, beats: Beats): HandedBars {
  let next = 0;
  return bars.map((all, bar) =>
    all.map((each, beat) => (isIn(stretch, bar, beat) ? (beats[next++] ?? each) : each)),
  );
}

function beatsIn(bars: HandedBars, stretch: Stretch): Beats {
  return bars.flatMap((beats, bar) => beats.filter((_, beat) => isIn(stretch, bar, beat)));
}

/** Slots, in order, as beats that are divided as some others are. */
function dividedLike(beats: Beats, slots: readonly HandedSlot[]): Beats {
  let next = 0;
  return beats.map(({ length }) => {
    next += length;
    return slots.slice(next - length, next);
  });
}

/** The same exercise with other patterns and their hands. */
function withSlots(exercise: Unnumbered, change: (bars: HandedBars, voice: Voice) => HandedBars): Unnumbered {
  const parts = handedParts(exercise).map(({ voice, bars }) => ({ voice, bars: change(bars, voice) }));
  return withinItsBars({ ...exercise, ...withoutSlots(parts) });
}

/** Slots that were read from their end, each stroke again before what is held of it. */
function turned(slots: readonly HandedSlot[]): readonly HandedSlot[] {
  const found: HandedSlot[] = [];
  let held: HandedSlot[] = [];
  for (const slot of slots) {
    if (slot.mark === '~') held.push(slot);
    else {
      found.push(slot, ...held);
      held = [];
    }
  }
  return [...found, ...held];
}

/** The exercise read from its end, in the stretch: beats in the other order, each with its own division. */
export function backwards(exercise: Unnumbered, stretch: Stretch): Unnumbered {
  return withSlots(exercise, (bars) => {
    const beats = beatsIn(bars, stretch).toReversed();
    return withBeats(bars, stretch, dividedLike(beats, turned(beats.flatMap((slots) => slots.toReversed()))));
  });
}

/** The exercise with everything in the stretch one slot later (1) or earlier (-1); what leaves it comes in at its other end. */
export function shifted(exercise: Unnumbered, stretch: Stretch, by: -1 | 1): Unnumbered {
  return withSlots(exercise, (bars) => {
    const beats = beatsIn(bars, stretch);
    const slots = beats.flat();
    const moved = [...slots.slice(-by), ...slots.slice(0, -by)];
    return withBeats(bars, stretch, dividedLike(beats, moved));
  });
}

/** The exercise with one of its voices played by another; as it was where the exercise has that one already. */
export function ontoVoice(exercise: Unnumbered, part: number, voice: Voice): Unnumbered {
  if (exercise.parts.some((each) => each.voice === voice)) return exercise;
  const hasHands = VOICE_FACTS[voice].limb.endsWith('hand');
  const slotOn = ({ mark, hand }: HandedSlot) => ({
    mark: markFor(voice, mark),
    hand: hasHands ? hand : null,
  });
  const parts = handedParts(exercise).map((each, index) =>
    index === part
      ? { voice, bars: each.bars.map((beats) => beats.map((slots) => slots.map(slotOn))) }
      : each,
  );
  return { ...exercise, ...withoutSlots(parts) };
}

function cellTexts(beats: Beats): readonly string[] {
  return beats.map((slots) => slots.map(({ mark }) => mark).join(''));
}

function saidOf({ dynamics = [], above, below }: Unnumbered, bar: number): SaidOfBar {
  return {
    dynamics: dynamics.filter((sign) => sign.bar === bar).map((sign) => ({ ...sign, bar: 0 })),
    above: above?.[bar] ?? null,
    below: below?.[bar] ?? null,
  };
}

/** What every voice plays in a beat or a bar. */
export function snippetOf(
  exercise: Unnumbered,
  unit: 'beat' | 'bar',
  { bar, beat }: Stretch['place'],
): Snippet {
  const parts = handedParts(exercise).map(({ voice, bars }): SnippetPart => {
    const own = bars[bar] ?? [];
    const beats = unit === 'bar' ? own : own.slice(beat, beat + 1);
    const hands = beats.flat().flatMap(({ hand }) => hand ?? []);
    return { voice, bars: [cellTexts(beats)], ...(hands.length > 0 ? { hands } : {}) };
  });
  return unit === 'bar' ? { unit, parts, said: saidOf(exercise, bar) } : { unit, parts };
}

/** The exercise without a bar, or with a silent beat; its only bar is silent then. */
export function withoutSnippet(exercise: Unnumbered, { unit, place }: Stretch): Unnumbered {
  const isOnly = (exercise.parts[0]?.pattern.bars.length ?? 1) < 2;
  if (unit === 'bar' && !isOnly) return withoutBar(exercise, place.bar);
  return withSlots(exercise, (bars) => {
    const silent = beatsIn(bars, { unit, place }).map((slots) => slots.map(() => SILENT_SLOT));
    return withBeats(bars, { unit, place }, silent);
  });
}

function slotsOf({ bars, hands }: SnippetPart): HandedBars {
  const pattern = { bars: bars.map((texts) => texts.map((text) => cell(text))) };
  return handSlots(pattern, hands ?? null);
}

/** What a voice plays of a snippet: what was its own; of a snippet of one voice, that one's; silence else. */
function barsFor(snippet: Snippet, voice: Voice, isFirst: boolean): HandedBars {
  const own = snippet.parts.find((each) => each.voice === voice);
  if (own) return slotsOf(own);
  const [first] = snippet.parts;
  const isOnly = snippet.parts.length === 1 && isFirst;
  const slotOn = ({ mark, hand }: HandedSlot) =>
    isOnly ? { mark: markFor(voice, mark), hand } : SILENT_SLOT;
  return (first ? slotsOf(first) : []).map((beats) => beats.map((slots) => slots.map(slotOn)));
}

/** What a bar that was put in says, beside what the others do. */
function withSaid(exercise: Unnumbered, bar: number, { dynamics, above, below }: SaidOfBar): Unnumbered {
  const { dynamics: _d, above: _a, below: _b, ...rest } = exercise;
  const signs = [...(exercise.dynamics ?? []), ...dynamics.map((sign) => ({ ...sign, bar }))];
  const texts = (written: readonly (string | null)[] = [], text: string | null) => {
    const all = Array.from({ length: Math.max(written.length, bar + 1) }, (_, i) => written[i] ?? null);
    return text === null ? written : all.with(bar, text);
  };
  const [over, under] = [texts(exercise.above, above), texts(exercise.below, below)];
  return {
    ...rest,
    ...(signs.length > 0 ? { dynamics: signs.toSorted((a, b) => a.bar - b.bar || a.beat - b.beat) } : {}),
    ...(over.length > 0 ? { above: over } : {}),
    ...(under.length > 0 ? { below: under } : {}),
  };
}

/** The exercise with a bar put in behind a bar, or a beat in place of a beat. */
export function withSnippet(
  exercise: Unnumbered,
  snippet: Snippet,
  { bar, beat }: Stretch['place'],
): Unnumbered {
  const { unit, said } = snippet;
  const [first] = exercise.parts;
  const to = unit === 'bar' ? { bar: bar + 1, beat: 0 } : { bar, beat };
  const roomy = unit === 'bar' ? withBar(exercise, bar, 'silent') : exercise;
  const after = withSlots(roomy, (bars, voice) => {
    const [beats = []] = barsFor(snippet, voice, voice === first?.voice);
    return withBeats(bars, { unit, place: to }, beats);
  });
  return said ? withSaid(after, to.bar, said) : after;
}
