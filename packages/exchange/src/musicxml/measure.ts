/**
 * A spelled bar as a MusicXML measure.
 *
 * Conventions: a voice for each layer: 1 the hands, stems up; 2 the feet, stems down, after a backup of the whole bar.
 * Divisions are the fewest per quarter that write every duration of the score as a whole number.
 */
import {
  type Fraction,
  fraction,
  type LeadDb,
  type Meter,
  multiply,
  type NotatedBar,
  type NotatedGroup,
  type NotatedHead,
  type NotatedLayer,
} from '@shedbook/core';
import { type XmlNode, xml } from '../xml/write-xml.ts';
import { beamValues } from './beams.ts';
import { noteNodes } from './note.ts';

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return (a / x) * b;
}

/** Divisions per quarter that write all durations of some bars. */
export function divisionsFor(bars: readonly NotatedBar[]): number {
  const events = bars.flatMap((bar) =>
    bar.layers.flatMap((layer) => layer.groups.flatMap((group) => group.events)),
  );
  const lengths = [...bars.map((bar) => bar.meter.bar), ...events.map((event) => event.duration)];
  return lengths.map((length) => multiply(length, fraction(4)).den).reduce(leastCommonMultiple, 1);
}

/** What a measure needs of its score. */
export interface MeasureContext {
  /** Number of divisions that a quarter note has. */
  readonly divisions: number;
  /** The level of a head, by where it starts in its bar. */
  readonly levelDb: (head: NotatedHead, start: Fraction) => LeadDb;
}

function inDivisions(length: Fraction, divisions: number): number {
  return (length.num * 4 * divisions) / length.den;
}

function bracketAt(group: NotatedGroup, index: number) {
  if (!group.tuplet) return null;
  const shown = group.tuplet.bracket;
  if (index === 0) return { type: 'start' as const, shown };
  return index === group.events.length - 1 ? { type: 'stop' as const, shown } : null;
}

function groupNodes(
  group: NotatedGroup,
  layer: NotatedLayer,
  meter: Meter,
  context: MeasureContext,
): readonly XmlNode[] {
  const beams = beamValues(group.events);
  return group.events.flatMap((event, i) =>
    noteNodes(event, {
      voice: layer.layer,
      stem: layer.stems,
      duration: inDivisions(event.duration, context.divisions),
      tuplet: group.tuplet,
      bracket: bracketAt(group, i),
      beams: beams[i] ?? [],
      wholeBar: event.kind === 'rest' && group.beats === meter.beats.length && group.events.length === 1,
      levelDb: (head) => context.levelDb(head, event.start),
    }),
  );
}

/** The notes of a bar, voice after voice. */
export function barNodes(bar: NotatedBar, context: MeasureContext): readonly XmlNode[] {
  const backup = xml('backup', {}, [xml('duration', {}, inDivisions(bar.meter.bar, context.divisions))]);
  return bar.layers.flatMap((layer, i) => [
    ...(i === 0 ? [] : [backup]),
    ...layer.groups.flatMap((group) => groupNodes(group, layer, bar.meter, context)),
  ]);
}

/** A meter. */
export function timeNode(meter: Meter): XmlNode {
  return xml('time', {}, [
    xml('beats', {}, meter.text.split('/')[0] ?? meter.upper),
    xml('beat-type', {}, meter.lower),
  ]);
}

/** Divisions, meter and clef at the start of the part. */
export function attributesNode(meter: Meter, divisions: number): XmlNode {
  return xml('attributes', {}, [
    xml('divisions', {}, divisions),
    timeNode(meter),
    xml('clef', {}, [xml('sign', {}, 'percussion')]),
  ]);
}
