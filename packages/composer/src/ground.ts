/**
 * The ground that a bar of comping is played over: which other limbs strike where, and how fast the beats go.
 *
 * Conventions: beats count from 0 through all bars of the exercise; a place is a slot (from 0) of a beat divided
 * in `slots`. Places are compared as they are performed, so that a swung eighth and a last triplet fall together.
 * Seconds are at the goal tempo. Where the groove is longer than the exercise (a two-bar clave under one bar), each
 * way they meet counts in equal shares.
 */
import {
  type Cell,
  commonGrid,
  type Exercise,
  type GroovePart,
  isDotted,
  type Lesson,
  type Limb,
  type Meter,
  performedPhase,
  struckSlots,
  swingAt,
  type Voice,
  wholeNotesToSeconds,
} from '@shedbook/core';

/** With whom a stroke falls, as shares that add up to 1. */
export interface Company {
  /** Share in which the lead hand strikes too. */
  readonly lead: number;
  /** Share in which not the lead hand, but a foot or the other hand strikes too. */
  readonly foot: number;
  /** Share in which nobody else strikes. */
  readonly alone: number;
  /** The voices that strike too, in any way the groove meets the bar. */
  readonly voices: readonly Voice[];
}

/** What one moment asks of the lead hand and the comping limb: both, the lead hand only, or the comping limb only. */
export type Meeting = 'both' | 'lead' | 'own';

/** A groove made ready for grading. */
export interface Ground {
  readonly meter: Meter;
  readonly bars: number;
  /** Beats of all bars. */
  readonly length: number;
  /** The limb that comps. */
  readonly limb: Limb;
  /** Performed phase of a place in its beat, 0 to 1. */
  phase(beat: number, slot: number, slots: number): number;
  /** Length of a beat in seconds at the goal tempo. */
  beatSeconds(beat: number): number;
  company(beat: number, slot: number, slots: number): Company;
  /** The moments of a beat in which the lead hand or a cell strikes, in order, for each way the groove meets the bar. */
  meetings(beat: number, cell: Cell): readonly (readonly Meeting[])[];
  /** Whether the comping limb is busy with another voice of the groove there. */
  isBusy(beat: number, slot: number, slots: number): boolean;
}

/** Phases closer than this are one moment. */
const SAME_MOMENT = 1e-6;

interface Moment {
  readonly phase: number;
  readonly limb: Limb;
  readonly voice: Voice;
}

type PhaseOf = (beat: number, slot: number, slots: number) => number;

function momentsOf(part: GroovePart, bar: number, lesson: Lesson, phaseOf: PhaseOf): readonly Moment[][] {
  const cells = part.pattern.bars[bar % part.pattern.bars.length] ?? [];
  return cells.map((cell, beat) =>
    struckSlots(cell).map((slot) => ({
      phase: phaseOf(beat, slot, cell.marks.length),
      limb: lesson.limbs[part.voice],
      voice: part.voice,
    })),
  );
}

/** Moments by groove bar, then by beat. */
function grooveMoments(
  lesson: Lesson,
  parts: readonly GroovePart[],
  phaseOf: PhaseOf,
): readonly Moment[][][] {
  const bars = commonGrid(parts.map((part) => part.pattern.bars.length));
  return Array.from({ length: bars }, (_, bar) => {
    const byPart = parts.map((part) => momentsOf(part, bar, lesson, phaseOf));
    return lesson.meter.beats.map((_beat, beat) => byPart.flatMap((moments) => moments[beat] ?? []));
  });
}

function companyOf(ways: readonly (readonly Moment[])[]): Company {
  const lead = ways.filter((moments) => moments.some((each) => each.limb === 'lead hand')).length;
  const alone = ways.filter((moments) => moments.length === 0).length;
  const voices = new Set(ways.flat().map((each) => each.voice));
  const share = (count: number) => count / ways.length;
  return {
    lead: share(lead),
    foot: share(ways.length - lead - alone),
    alone: share(alone),
    voices: [...voices],
  };
}

/** The meetings of a beat's own strokes with what the lead hand plays in it. */
function meetingsOf(own: readonly number[], moments: readonly Moment[]): readonly Meeting[] {
  const lead = moments.filter((each) => each.limb === 'lead hand').map((each) => each.phase);
  const among = (list: readonly number[], phase: number) =>
    list.some((each) => Math.abs(each - phase) < SAME_MOMENT);
  const alone = lead.filter((phase) => !among(own, phase)).map((phase) => ({ phase, is: 'lead' as Meeting }));
  const struck = own.map((phase) => ({ phase, is: (among(lead, phase) ? 'both' : 'own') as Meeting }));
  return [...alone, ...struck].sort((a, b) => a.phase - b.phase).map((each) => each.is);
}

/**
 * The ground under an exercise of `bars` bars for the lesson's comping voice.
 * @param voices voices that the exercise plays itself and the groove leaves out; the comping voice when left out
 */
export function readGround(
  lesson: Lesson,
  bars: number,
  voices: readonly Voice[] = [lesson.comping],
): Ground {
  const { meter } = lesson;
  const bpm = lesson.tempo.goalBpm;
  const swing = swingAt(lesson.feel, bpm);
  const inBar = meter.beats.length;
  const lengthOf = (beat: number) => meter.beats[beat % inBar] ?? meter.bar;
  const phase: PhaseOf = (beat, slot, slots) => performedPhase(slot, slots, isDotted(lengthOf(beat)), swing);
  const limb = lesson.limbs[lesson.comping];
  const groove = grooveMoments(
    lesson,
    lesson.groove.filter((part) => !voices.includes(part.voice)),
    phase,
  );
  const ways = commonGrid([groove.length, bars]) / bars;
  const inBeat = (beat: number): readonly (readonly Moment[])[] =>
    Array.from({ length: ways }, (_, way) => {
      const bar = (way * bars + Math.floor(beat / inBar)) % groove.length;
      return groove[bar]?.[beat % inBar] ?? [];
    });
  const at = (beat: number, slot: number, slots: number): readonly (readonly Moment[])[] => {
    const place = phase(beat, slot, slots);
    return inBeat(beat).map((moments) =>
      moments.filter((each) => Math.abs(each.phase - place) < SAME_MOMENT),
    );
  };
  return {
    meter,
    bars,
    length: inBar * bars,
    limb,
    phase,
    beatSeconds: (beat) => wholeNotesToSeconds(lengthOf(beat), bpm),
    company: (beat, slot, slots) =>
      companyOf(at(beat, slot, slots).map((moments) => moments.filter((each) => each.limb !== limb))),
    meetings: (beat, cell) => {
      const own = struckSlots(cell).map((slot) => phase(beat, slot, cell.marks.length));
      return inBeat(beat).map((moments) =>
        meetingsOf(
          own,
          moments.filter((each) => each.limb !== limb),
        ),
      );
    },
    isBusy: (beat, slot, slots) =>
      at(beat, slot, slots).some((way) => way.some((each) => each.limb === limb)),
  };
}

/** The ground under an exercise: its own voices leave the groove. */
export function groundOf(lesson: Lesson, exercise: Exercise): Ground {
  const bars = exercise.parts[0]?.pattern.bars.length ?? 1;
  return readGround(
    lesson,
    bars,
    exercise.parts.map((part) => part.voice),
  );
}
