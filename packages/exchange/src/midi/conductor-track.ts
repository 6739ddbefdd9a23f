/**
 * The first track: title, meter, tempo of every bar where it changes, and markers.
 * Source: Standard MIDI Files 1.0 (MMA RP-001): in format 1 the tempo map is the first track.
 */
import { type Meter, Ticks, toNumber } from '@shedbook/core';
import { type BarPlacement, type Placement, TICKS_PER_QUARTER } from './placement.ts';
import type { SmfEvent, SmfTrack, TempoEvent, TextEvent, TimeSignatureEvent } from './smf.ts';

/** MIDI clocks in a whole note. */
const CLOCKS_PER_WHOLE = 96;

/** Longest and shortest that the three bytes of a tempo event can say, in microseconds per quarter. */
const TEMPO_RANGE = { least: 1, most: 0xffffff } as const;

/**
 * The time signature of a meter, its metronome clicking the first beat's length: a dotted quarter in 6/8. An
 * additive meter clicks its divisions, since its beats are not of one length.
 */
export function timeSignature(meter: Meter, ticks = Ticks(0)): TimeSignatureEvent {
  const first = meter.beats[0];
  const even = first && meter.beats.every((beat) => beat.num * first.den === first.num * beat.den);
  const click = even ? toNumber(first) : 1 / meter.lower;
  return {
    kind: 'time-signature',
    ticks,
    upper: meter.upper,
    lower: meter.lower,
    clocksPerClick: Math.max(1, Math.round(CLOCKS_PER_WHOLE * click)),
  };
}

function tempoOf(bar: BarPlacement, barTicks: Ticks): TempoEvent {
  const exact = (bar.durationSeconds * 1e6 * TICKS_PER_QUARTER) / barTicks;
  const microsecondsPerQuarter = Math.min(TEMPO_RANGE.most, Math.max(TEMPO_RANGE.least, Math.round(exact)));
  return { kind: 'tempo', ticks: bar.startTicks, microsecondsPerQuarter };
}

function tempoEvents(placements: readonly Placement[]): readonly TempoEvent[] {
  const tempi = placements.flatMap(({ bars, barTicks }) => bars.map((bar) => tempoOf(bar, barTicks)));
  return tempi.filter((tempo, i) => tempo.microsecondsPerQuarter !== tempi[i - 1]?.microsecondsPerQuarter);
}

function markersOf(placement: Placement, name: string | null): readonly TextEvent[] {
  const named: TextEvent[] = name
    ? [{ kind: 'marker', ticks: placement.bars[0]?.startTicks ?? Ticks(0), text: name }]
    : [];
  const changes = placement.bars.filter((bar, i) => bar.play !== placement.bars[i - 1]?.play);
  return [
    ...named,
    ...changes.map(({ startTicks, play }) => ({ kind: 'marker' as const, ticks: startTicks, text: play })),
  ];
}

/** What the first track says of the lesson. */
export interface ConductorOptions {
  readonly title: string;
  readonly by: string | null;
}

/** What is laid one after another: its name, its meter, and where it lies. */
export interface PlacedSection {
  readonly name: string | null;
  readonly meter: Meter;
  readonly placement: Placement;
}

/** The meter of the first section, and of each that changes it. */
function timeSignatures(sections: readonly PlacedSection[]): readonly TimeSignatureEvent[] {
  return sections.flatMap(({ meter, placement }, i) =>
    meter.text === sections[i - 1]?.meter.text
      ? []
      : [timeSignature(meter, placement.bars[0]?.startTicks ?? Ticks(0))],
  );
}

/** The conductor's track of performances laid one after another. */
export function conductorTrack(sections: readonly PlacedSection[], options: ConductorOptions): SmfTrack {
  const placements = sections.map((section) => section.placement);
  const text: SmfEvent[] = [{ kind: 'name', ticks: Ticks(0), text: options.title }];
  if (options.by) text.push({ kind: 'text', ticks: Ticks(0), text: options.by });
  const markers = sections.flatMap((section) => markersOf(section.placement, section.name));
  const timed: SmfEvent[] = [...timeSignatures(sections), ...tempoEvents(placements), ...markers];
  return {
    events: [...text, ...timed.sort((a, b) => a.ticks - b.ticks)],
    endTicks: placements.at(-1)?.endTicks ?? Ticks(0),
  };
}
