/**
 * Tempo, swing, numbers and names above the staff.
 * Source: MusicXML 4.0: `sound` tempo is in quarter notes a minute in every meter; `swing` is a ratio in lowest
 * terms, or `straight`.
 */
import {
  type Feel,
  type Fraction,
  fraction,
  type Meter,
  type SwingRatio,
  swingAt,
  tempoBeat,
  toNumber,
} from '@shedbook/core';
import { type XmlNode, xml } from '../xml/write-xml.ts';
import { noteTypeName } from './note.ts';

/** How far a written ratio may be from the lesson's: a hundredth, which nobody hears. */
const RATIO_ERROR = 0.01;

/**
 * The ratio in the smallest whole numbers that is within a hundredth.
 * @example simplestRatio(1.8) // { num: 9, den: 5 }
 */
export function simplestRatio(ratio: number): Fraction {
  let den = 1;
  while (Math.abs(Math.round(ratio * den) / den - ratio) >= RATIO_ERROR) den += 1;
  return fraction(Math.round(ratio * den), den);
}

function swingNode(swing: SwingRatio | null): XmlNode {
  const { num, den } = swing ? simplestRatio(swing.ratio) : fraction(1);
  if (!swing || num === den) return xml('swing', {}, [xml('straight')]);
  return xml('swing', {}, [
    xml('first', {}, num),
    xml('second', {}, den),
    xml('swing-type', {}, swing.of === 'eighths' ? 'eighth' : '16th'),
  ]);
}

function beatUnit(beat: Fraction): readonly XmlNode[] {
  const dotted = beat.num === 3;
  const base = (dotted ? beat.den / 2 : beat.den) as Parameters<typeof noteTypeName>[0];
  return [xml('beat-unit', {}, noteTypeName(base)), ...(dotted ? [xml('beat-unit-dot')] : [])];
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/** The tempo mark of a lesson at `bpm` quarter notes a minute, with tempo and swing for playback. */
export function tempoDirection(meter: Meter, feel: Feel, bpm: number): XmlNode {
  const beat = tempoBeat(meter);
  return xml('direction', { placement: 'above' }, [
    xml('direction-type', {}, [
      xml('metronome', {}, [...beatUnit(beat), xml('per-minute', {}, round(bpm / (4 * toNumber(beat))))]),
    ]),
    xml('sound', { tempo: round(bpm) }, [swingNode(swingAt(feel, bpm))]),
  ]);
}

/** The number of an exercise in a box. */
export function numberDirection(number: number): XmlNode {
  return xml('direction', { placement: 'above' }, [
    xml('direction-type', {}, [xml('rehearsal', { enclosure: 'square' }, number)]),
  ]);
}

/** Words above the staff. */
export function wordsDirection(text: string): XmlNode {
  return xml('direction', { placement: 'above' }, [xml('direction-type', {}, [xml('words', {}, text)])]);
}
