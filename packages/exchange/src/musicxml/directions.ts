/**
 * Tempo, swing, numbers and names above the staff.
 * Source: MusicXML 4.0: `sound` tempo is in quarter notes a minute in every meter; `swing` is a ratio in lowest
 * terms, or `straight`.
 */
import {
  type Beater,
  type DynamicSign,
  exerciseLabel,
  type Feel,
  type Fraction,
  formatHow,
  fraction,
  type How,
  type HowWord,
  howWords,
  type Meter,
  type SwingRatio,
  swingAt,
  tempoBeat,
  toNumber,
  VOICE_FACTS,
  type Voice,
} from '@shedbook/core';
import { type XmlNode, xml } from '../xml/write-xml.ts';
import { noteTypeName } from './note.ts';

/** What the hands hold, by its name in MusicXML. */
export const BEATER_NAMES: Readonly<Record<Beater, string>> = {
  sticks: 'snare stick',
  brushes: 'wire brush',
};

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

/** The picture of what the hands hold. @source MusicXML 4.0, element beater */
export function beaterDirection(playedWith: Beater): XmlNode {
  const beater = xml('beater', {}, BEATER_NAMES[playedWith]);
  return xml('direction', { placement: 'above' }, [
    xml('direction-type', {}, [xml('percussion', {}, [beater])]),
  ]);
}

/** The number of an exercise in a box. */
export function numberDirection(number: number): XmlNode {
  return xml('direction', { placement: 'above' }, [
    xml('direction-type', {}, [xml('rehearsal', { enclosure: 'square' }, exerciseLabel(number))]),
  ]);
}

/** A name or a heading above the staff. */
export function nameDirection(name: string): XmlNode {
  return xml('direction', { placement: 'above' }, [xml('direction-type', {}, [xml('words', {}, name)])]);
}

/** The style of what is said of the playing, by which a reader tells it from a name. */
export const SAID_STYLE = 'italic';

/** What is said of the playing, above or below the staff. */
export function wordsDirection(text: string, placement: 'above' | 'below' = 'above'): XmlNode {
  const words = xml('words', { 'font-style': SAID_STYLE }, text);
  return xml('direction', { placement }, [xml('direction-type', {}, [words])]);
}

/** Where a stick strikes, as MusicXML draws it. @source MusicXML 4.0, stick-location-value */
const STICK_LOCATIONS: Readonly<Partial<Record<HowWord, string>>> = {
  centre: 'center',
  bell: 'cymbal bell',
};

/** How a voice is played: its words, and the picture that there is for some of them. */
export function howDirection(voice: Voice, how: How): XmlNode {
  const pictures = howWords(how).flatMap((word) => STICK_LOCATIONS[word] ?? []);
  const words = xml('words', { 'font-style': SAID_STYLE }, `${VOICE_FACTS[voice].label}: ${formatHow(how)}`);
  return xml('direction', { placement: 'above' }, [
    ...pictures.map((where) =>
      xml('direction-type', {}, [xml('percussion', {}, [xml('stick-location', {}, where)])]),
    ),
    xml('direction-type', {}, [words]),
  ]);
}

/** One thing below the staff, so many divisions after the place at which it is written. */
function belowAt(kind: XmlNode, divisions: number): XmlNode {
  return xml('direction', { placement: 'below' }, [
    xml('direction-type', {}, [kind]),
    ...(divisions === 0 ? [] : [xml('offset', {}, divisions)]),
  ]);
}

/**
 * Dynamics and hairpins of one bar, to be written at its start.
 * @param isOpen whether a hairpin is open from before
 * @param divisionsOf how many divisions after the bar line a beat (from 0) starts
 * @returns the directions, and whether a hairpin is open after them
 */
export function dynamicDirections(
  signs: readonly DynamicSign[],
  isOpen: boolean,
  divisionsOf: (beat: number) => number,
): { readonly nodes: readonly XmlNode[]; readonly isOpen: boolean } {
  const nodes: XmlNode[] = [];
  let open = isOpen;
  for (const { beat, mark, hairpin } of signs) {
    const at = divisionsOf(beat);
    if (open) nodes.push(belowAt(xml('wedge', { type: 'stop', number: 1 }), at));
    if (mark) nodes.push(belowAt(xml('dynamics', {}, [xml(mark)]), at));
    open = hairpin === 'louder' || hairpin === 'softer';
    if (open) {
      const type = hairpin === 'louder' ? 'crescendo' : 'diminuendo';
      nodes.push(belowAt(xml('wedge', { type, number: 1 }), at));
    }
  }
  return { nodes, isOpen: open };
}

/** The end of a hairpin at the end of a bar so many divisions long. */
export function closingWedge(divisions: number): XmlNode {
  return belowAt(xml('wedge', { type: 'stop', number: 1 }), divisions);
}
