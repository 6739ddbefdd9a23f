/**
 * From the cells of several voices to notation: voices that share a layer share a stem where they are struck together.
 */
import { strikeOf } from '../kit/strike.ts';
import { isStruck, struckSlots } from '../rhythm/cell.ts';
import { add, equals, type Fraction, fraction, multiply } from '../rhythm/fraction.ts';
import { commonGrid } from '../rhythm/grid.ts';
import { beatLength, beatStarts, type Meter } from '../rhythm/meter.ts';
import { markBeams, needsBracket } from './beam.ts';
import { type BarPart, gridOfPart, type Stave, stavesOf } from './layers.ts';
import type { NotatedBar, NotatedEvent, NotatedGroup, NotatedHead, NotatedLayer } from './notation.ts';
import { type SpelledBeat, spellBeat, valueDuration } from './spell.ts';

interface PlacedHead {
  readonly at: Fraction;
  readonly head: NotatedHead;
}

/** Heads of one beat by their place in the beat (a fraction of the beat). */
function headsOfBeat(part: BarPart, beat: number): readonly PlacedHead[] {
  const cell = part.cells[beat];
  if (!cell) return [];
  const before = part.cells.slice(0, beat).reduce((sum, each) => sum + struckSlots(each).length, 0);
  let stroke = before;
  return cell.marks.flatMap((mark, slot) => {
    if (!isStruck(mark)) return [];
    const strike = strikeOf(part.voice, mark);
    const sticking = part.sticking?.[stroke] ?? null;
    stroke += 1;
    if (!strike) throw new RangeError(`Internal error: ${part.voice} has no mark "${mark}"`);
    const { voice, articulation, accent, ghost } = strike;
    const head = { voice, articulation, mark, accent, ghost, sticking };
    return [{ at: fraction(slot, cell.marks.length), head }];
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
  const length = beatLength(meter, beat);
  const spelled = spellBeat(length, grid, struck);
  const start = beatStarts(meter)[beat] ?? fraction(0);
  const headsAt = (slot: number) => placed.filter(({ at }) => slotOf(at) === slot).map(({ head }) => head);
  const events = eventsOf(spelled, start, length, headsAt);
  const tuplet = spelled.tuplet ? { ...spelled.tuplet, bracket: needsBracket(events) } : null;
  return { beat, beats: 1, tuplet, events };
}

function eventsOf(
  spelled: SpelledBeat,
  start: Fraction,
  beat: Fraction,
  headsAt: (slot: number) => readonly NotatedHead[],
): readonly NotatedEvent[] {
  const plain = spelled.events.map((event) => ({
    kind: event.kind,
    heads: event.kind === 'note' ? headsAt(event.slot) : [],
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
  return part.cells.every((cell) => struckSlots(cell).length === 0);
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
