/**
 * From the cells of several voices to notation: voices that share a layer share a stem where they are struck together.
 */
import { strikeOf } from '../kit/strike.ts';
import type { Voice } from '../kit/voice.ts';
import { type Cell, isStruck, type Mark, struckSlots, turningSlots } from '../rhythm/cell.ts';
import { add, equals, type Fraction, fraction, multiply } from '../rhythm/fraction.ts';
import { commonGrid } from '../rhythm/grid.ts';
import { heldInto } from '../rhythm/held.ts';
import { beatLength, beatStarts, type Meter } from '../rhythm/meter.ts';
import type { Pattern } from '../rhythm/pattern.ts';
import { markBeams, needsBracket } from './beam.ts';
import { type BarPart, gridOfPart, type Stave, stavesOf } from './layers.ts';
import type { NotatedBar, NotatedEvent, NotatedGroup, NotatedHead, NotatedLayer } from './notation.ts';
import { type SpelledBeat, spellBeat, valueDuration } from './spell.ts';

interface PlacedHead {
  readonly at: Fraction;
  readonly head: NotatedHead;
  /** Where it ends in this beat, if it is held. */
  readonly end: Fraction | null;
}

/** What is held into a beat: what was struck last before it, in its bar or an earlier one. */
function heldBefore({ cells, held = '.' }: BarPart, beat: number): Mark {
  const before = cells.slice(0, beat).flatMap(({ marks }) => marks);
  return before.findLast((mark) => mark !== '~') ?? held;
}

/** Where what begins in a slot ends inside its cell; null where it is not held. */
function endInCell({ marks }: Cell, slot: number, isHeldOn: boolean): Fraction | null {
  let end = slot + 1;
  while (marks[end] === '~') end += 1;
  const isHeld = marks[slot] === '~' || end > slot + 1 || (end === marks.length && isHeldOn);
  return isHeld ? fraction(end, marks.length) : null;
}

/** Whether what ends a beat goes on into the next one. */
function goesOnAfter({ cells, goesOn }: BarPart, beat: number): boolean {
  const next = cells[beat + 1];
  return next ? next.marks[0] === '~' : goesOn === true;
}

/** Heads of one beat by their place in the beat (a fraction of the beat). */
function headsOfBeat(part: BarPart, beat: number): readonly PlacedHead[] {
  const cell = part.cells[beat];
  if (!cell) return [];
  let stroke = part.cells.slice(0, beat).reduce((sum, each) => sum + struckSlots(each).length, 0);
  const isHeldOn = goesOnAfter(part, beat);
  return cell.marks.flatMap((mark, slot) => {
    const isHeld = mark === '~' && slot === 0;
    const meant = isHeld ? heldBefore(part, beat) : mark;
    if (!isStruck(meant)) return [];
    const strike = strikeOf(part.voice, meant);
    if (!strike) throw new RangeError(`Internal error: ${part.voice} has no mark "${meant}"`);
    const { accent, ghost, ...struck } = strike;
    const end = endInCell(cell, slot, isHeldOn);
    const touch = isHeld
      ? { mark, accent: false, ghost: false, sticking: null, isHeld }
      : { mark, accent, ghost, sticking: part.sticking?.[stroke++] ?? null };
    const head = {
      ...struck,
      ...touch,
      ...(isHeldOn && end?.num === 1 && end.den === 1 ? { goesOn: true } : {}),
    };
    return [{ at: fraction(slot, cell.marks.length), head: head as NotatedHead, end }];
  });
}

function gridOf(parts: readonly BarPart[], beat: number): number {
  return commonGrid(parts.map((part) => gridOfPart(part, beat)));
}

function notateBeat(parts: readonly BarPart[], meter: Meter, beat: number): NotatedGroup {
  const grid = gridOf(parts, beat);
  const placed = parts.flatMap((part) => headsOfBeat(part, beat));
  const slotOf = (at: Fraction) => (at.num * grid) / at.den;
  const struck = [...new Set(placed.map(({ at }) => slotOf(at)))].sort((a, b) => a - b);
  const held = placed.flatMap(({ at, end }) => (end ? [{ from: slotOf(at), to: slotOf(end) }] : []));
  const length = beatLength(meter, beat);
  const spelled = spellBeat(length, grid, struck, held);
  const start = beatStarts(meter)[beat] ?? fraction(0);
  const headsAt = (slot: number) => placed.filter(({ at }) => slotOf(at) === slot).map(({ head }) => head);
  const events = eventsOf(spelled, start, length, headsAt);
  const tuplet = spelled.tuplet ? { ...spelled.tuplet, bracket: needsBracket(events) } : null;
  return { beat, beats: 1, tuplet, events };
}

/** The heads of each note of a beat; one that goes on from the note before it has that note's, tied. */
function headsOfEvents(
  { events }: SpelledBeat,
  headsAt: (slot: number) => readonly NotatedHead[],
): readonly (readonly NotatedHead[])[] {
  let last: readonly NotatedHead[] = [];
  return events.map(({ kind, slot, continues }, index) => {
    if (kind === 'rest') return [];
    if (!continues) last = headsAt(slot);
    const isTied = events[index + 1]?.continues === true;
    return last.map(({ goesOn, ...head }) => ({
      ...head,
      ...(continues
        ? { mark: '~' as const, accent: false, ghost: false, sticking: null, isHeld: true as const }
        : {}),
      ...(isTied || goesOn ? { goesOn: true as const } : {}),
    }));
  });
}

function eventsOf(
  spelled: SpelledBeat,
  start: Fraction,
  beat: Fraction,
  headsAt: (slot: number) => readonly NotatedHead[],
): readonly NotatedEvent[] {
  const heads = headsOfEvents(spelled, headsAt);
  const plain = spelled.events.map((event, index) => ({
    kind: event.kind,
    heads: heads[index] ?? [],
    value: event.value,
    start: add(start, multiply(beat, fraction(event.slot, spelled.slots))),
    duration: valueDuration(event.value, spelled.tuplet),
    slot: event.slot,
    slots: spelled.slots,
    beamed: false,
  }));
  return markBeams(plain);
}

function isRestGroup(group: NotatedGroup): boolean {
  return group.events.every((event) => event.kind === 'rest');
}

/** A rest over several beats; over the whole bar it is the bar rest, whatever the meter. */
function restOver(meter: Meter, beat: number, beats: number): NotatedGroup {
  const duration = meter.beats.slice(beat, beat + beats).reduce(add);
  const start = beatStarts(meter)[beat] ?? fraction(0);
  const value = equals(duration, meter.bar)
    ? ({ base: 1, dots: 0 } as const)
    : ({ base: 2, dots: 0 } as const);
  const event: NotatedEvent = {
    kind: 'rest',
    heads: [],
    value,
    start,
    duration,
    slot: 0,
    slots: 1,
    beamed: false,
  };
  return { beat, beats, tuplet: null, events: [event] };
}

/** In four quarters, silent halves of the bar take a half rest; a silent bar takes a bar rest. */
function joinRests(groups: readonly NotatedGroup[], meter: Meter): readonly NotatedGroup[] {
  if (groups.every(isRestGroup)) return [restOver(meter, 0, meter.beats.length)];
  if (meter.text !== '4/4') return groups;
  return [0, 2].flatMap((beat) => {
    const half = groups.slice(beat, beat + 2);
    return half.every(isRestGroup) ? [restOver(meter, beat, 2)] : half;
  });
}

function notateLayer(layer: Stave, meter: Meter): NotatedLayer {
  const groups = meter.beats.map((_, beat) => notateBeat(layer.parts, meter, beat));
  return { layer: layer.layer, stems: layer.stems, groups: joinRests(groups, meter) };
}

function isSilent(part: BarPart): boolean {
  return part.cells.every((cell) => turningSlots(cell).length === 0);
}

/**
 * Spells one bar: hands with stems up, feet with stems down, and what would break another voice's beat apart by itself.
 * @returns layers that each add up to the bar; a layer with no stroke is left out unless nothing is struck at
 * all, when one layer has the bar rest.
 * @throws RangeError when a part has another number of cells than the meter has beats, or a mark that its voice
 * cannot be played with.
 */
export function notateBar(parts: readonly BarPart[], meter: Meter): NotatedBar {
  for (const part of parts) {
    if (part.cells.length !== meter.beats.length) {
      throw new RangeError(`Internal error: ${part.cells.length} cells in a bar of ${meter.text}`);
    }
  }
  const struck = parts.filter((part) => !isSilent(part));
  return { meter, layers: stavesOf(struck).map((stave) => notateLayer(stave, meter)) };
}

/** A bar (from 0) of a voice as it is spelled, tied to the bars before and after it. */
export function barPart(voice: Voice, { bars }: Pattern, bar: number): BarPart {
  const held = heldInto(bars, bar);
  const next = bars[bar + 1]?.[0]?.marks[0];
  return {
    voice,
    cells: bars[bar] ?? [],
    ...(held ? { held } : {}),
    ...(next === '~' ? { goesOn: true } : {}),
  };
}
