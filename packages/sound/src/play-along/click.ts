/**
 * Clicks to play along with: on chosen beats, with a quiet subdivision under them, dropping out for some bars.
 *
 * Conventions: beats from 1, as people count; levels in dB relative to a plain stroke of the lead voice. Beats
 * divide the bar as the meter does, in even time; a subdivision is even too, whatever the feel of the music, for
 * it is a ruler. Where beats are not of one length its parts are: two in the short beats of 2+2+3/8 are three in the
 * long one.
 */
import {
  add,
  beatStarts,
  type Fraction,
  fraction,
  isSubdivision,
  LeadDb,
  type Mark,
  type Meter,
  type Performance,
  type PerformedBar,
  Seconds,
  type Stroke,
  type Subdivision,
  unitsIn,
} from '@shedbook/core';

/** Bars with click and bars without, over and over. */
export interface ClickGap {
  readonly soundingBars: number;
  readonly silentBars: number;
}

/** Where clicks fall and how loud they are. */
export interface ClickOptions {
  readonly meter: Meter;
  /** Beats that click, from 1; all of them where left out. */
  readonly beats?: readonly number[];
  /** Slots of every beat, of the shortest where they are not of one length, that are marked quietly between the clicks; 1 (none) where left out. */
  readonly subdivision?: Subdivision;
  /** Level of the first beat's click and of the others; −4 where left out. */
  readonly levelDb?: LeadDb;
  /** How far the subdivision lies above the clicks, in dB; −10 where left out. */
  readonly subdivisionDb?: number;
  /** Bars in which the click drops out; none where left out. */
  readonly gap?: ClickGap;
}

const CLICK_DB = LeadDb(-4);
const SUBDIVISION_DB = -10;

function lengthOf({ num, den }: Fraction): number {
  return num / den;
}

/** Whether a bar is one of those that click. Bars count from the first after the count-in. */
export function clicksIn(bar: number, gap: ClickGap | undefined): boolean {
  if (!gap) return true;
  const round = gap.soundingBars + gap.silentBars;
  return round <= 0 || (bar - 1) % round < gap.soundingBars;
}

/** Slots of a beat, so that those of all beats last alike; as many in each where that cannot be. */
function slotsIn(meter: Meter, beat: Fraction, subdivision: Subdivision): Subdivision {
  const shortest = Math.min(...meter.beats.map((each) => unitsIn(meter, each)));
  const slots = (subdivision * unitsIn(meter, beat)) / shortest;
  return isSubdivision(slots) ? slots : subdivision;
}

interface Tick {
  readonly beat: number;
  readonly slot: number;
  readonly slots: Subdivision;
  readonly mark: Mark;
  readonly levelDb: LeadDb;
  /** From the bar line, in whole notes. */
  readonly offset: Fraction;
}

/** The clicks of one bar. */
function ticksOf(options: ClickOptions): readonly Tick[] {
  const { meter, subdivision = 1, levelDb = CLICK_DB, subdivisionDb = SUBDIVISION_DB } = options;
  const chosen = new Set(options.beats ?? meter.beats.map((_, i) => i + 1));
  return beatStarts(meter).flatMap((start, i) => {
    const length = meter.beats[i] as Fraction;
    const slots = slotsIn(meter, length, subdivision);
    return Array.from({ length: slots }, (_, slot): Tick | null => {
      const offset = add(start, fraction(length.num * slot, length.den * slots));
      const place = { beat: i + 1, slot: slot + 1, slots, offset };
      if (slot > 0) return { ...place, mark: 'g', levelDb: LeadDb(levelDb + subdivisionDb) };
      if (chosen.has(i + 1)) return { ...place, mark: i === 0 ? 'X' : 'x', levelDb };
      return subdivision > 1 ? { ...place, mark: 'g', levelDb: LeadDb(levelDb + subdivisionDb) } : null;
    }).filter((tick) => tick !== null);
  });
}

function strokeOf(tick: Tick, bar: PerformedBar, options: ClickOptions): Stroke {
  const { meter } = options;
  const part = lengthOf(tick.offset) / lengthOf(meter.bar);
  return {
    voice: 'click',
    articulation: 'normal',
    limb: null,
    role: 'count-in',
    mark: tick.mark,
    written: { bar: bar.bar, beat: tick.beat, slot: tick.slot },
    slots: tick.slots,
    at: add(fraction(meter.bar.num * (bar.bar - 1), meter.bar.den), tick.offset),
    timeSeconds: Seconds(bar.startSeconds + part * bar.durationSeconds),
    levelDb: tick.levelDb,
    sticking: null,
  };
}

/**
 * A performance with clicks added to the bars after its count-in, but for those of which its form says where it clicks.
 * @returns a new performance, strokes in order of time; where a click and a stroke fall together the click is first.
 * @throws RangeError when a beat is not one of the meter's, or a gap has a negative or broken number of bars.
 */
export function addClicks(performance: Performance, options: ClickOptions): Performance {
  const count = options.meter.beats.length;
  const wrong = options.beats?.find((beat) => !Number.isInteger(beat) || beat < 1 || beat > count);
  if (wrong !== undefined) {
    throw new RangeError(`At beats: found ${wrong}, expected 1 to ${count} in ${options.meter.text}`);
  }
  for (const bars of options.gap ? [options.gap.soundingBars, options.gap.silentBars] : []) {
    if (!Number.isInteger(bars) || bars < 0) {
      throw new RangeError(`At gap: found ${bars} bars, expected a whole number from 0`);
    }
  }
  const ticks = ticksOf(options);
  const clicks = performance.bars
    .filter(({ play, bar, click }) => play !== 'count-in' && !click && clicksIn(bar, options.gap))
    .flatMap((bar) => ticks.map((tick) => strokeOf(tick, bar, options)));
  const strokes = [...clicks, ...performance.strokes].sort((a, b) => a.timeSeconds - b.timeSeconds);
  return { ...performance, strokes };
}
