/**
 * Which voice a note is: by its instrument's General MIDI key, or by its place on the staff and its head.
 *
 * Source: MusicXML 4.0: `midi-unpitched` counts keys from 1; a percussion clef is read as a treble clef, so in a
 * bass clef (as in the standard's own percussion tutorial) the same line is twelve steps lower.
 */
import {
  type Articulation,
  childOf,
  childrenOf,
  descend,
  VOICES,
  type Voice,
  type XmlElement,
} from '@shedbook/core';
import { keyToVoice } from '../midi/key-map.ts';
import { STAFF_PLACES } from './staff-places.ts';

/** An instrument of a part. */
export interface ReadInstrument {
  readonly name: string;
  /** General MIDI key from 0, or null where the file gives none. */
  readonly key: number | null;
}

/** What a note strikes. */
export interface StruckVoice {
  readonly voice: Voice;
  readonly articulation: Articulation;
}

/** All instruments of a score by id. */
export function readInstruments(root: XmlElement): ReadonlyMap<string, ReadInstrument> {
  const parts = childrenOf(childOf(root, 'part-list'), 'score-part');
  const keys = new Map<string, number>();
  for (const midi of parts.flatMap((part) => childrenOf(part, 'midi-instrument'))) {
    const key = Number(childOf(midi, 'midi-unpitched')?.text);
    if (Number.isInteger(key)) keys.set(midi.attributes['id'] ?? '', key - 1);
  }
  return new Map(
    parts.flatMap((part) =>
      childrenOf(part, 'score-instrument').map((instrument) => {
        const id = instrument.attributes['id'] ?? '';
        return [id, { name: childOf(instrument, 'instrument-name')?.text ?? id, key: keys.get(id) ?? null }];
      }),
    ),
  );
}

const STEPS = 'CDEFGAB';
const BASS_TO_TREBLE = 12;

/** Steps of the scale above C0, as if the clef were a treble clef; null without a place. */
function staffStep(note: XmlElement, clef: string): number | null {
  const unpitched = childOf(note, 'unpitched');
  const step = STEPS.indexOf(childOf(unpitched, 'display-step')?.text ?? '?');
  const octave = Number(childOf(unpitched, 'display-octave')?.text);
  if (step < 0 || !Number.isInteger(octave)) return null;
  return octave * 7 + step + (clef === 'F' ? BASS_TO_TREBLE : 0);
}

const CROSSES: ReadonlySet<string> = new Set(['x', 'cross', 'circle-x', 'diamond']);

function headKind(head: string): 'x' | 'slashed' | 'normal' {
  if (head === 'slashed') return 'slashed';
  return CROSSES.has(head) ? 'x' : 'normal';
}

function voiceAtPlace(note: XmlElement, clef: string, head: string): Voice | null {
  const step = staffStep(note, clef);
  const at = (voice: Voice) => {
    const place = STAFF_PLACES[voice];
    return place.octave * 7 + STEPS.indexOf(place.step) === step && place.head === headKind(head);
  };
  return VOICES.find(at) ?? null;
}

/** What the head and a sign for open make of a voice. */
function refine(struck: StruckVoice, head: string, open: boolean): StruckVoice {
  const { voice } = struck;
  if (voice === 'hihat' && open) return { ...struck, voice: 'hihat-open' };
  if (voice === 'hihat-foot' && open) return { ...struck, articulation: 'splash' };
  if (voice === 'ride' && head === 'diamond') return { ...struck, articulation: 'bell' };
  if (voice === 'snare' && head === 'slash') return { ...struck, articulation: 'sweep' };
  if (voice === 'snare' && headKind(head) === 'x') return { ...struck, voice: 'sidestick' };
  if (voice === 'snare' && head === 'slashed') return { ...struck, voice: 'rimshot' };
  return struck;
}

function voiceOfKey(key: number): StruckVoice | null {
  const meaning = keyToVoice(key);
  return meaning && meaning.voice !== 'click'
    ? { voice: meaning.voice, articulation: meaning.articulation }
    : null;
}

/** What an unpitched note strikes, or null when it is no voice of the drum set. */
export function voiceOfNote(
  note: XmlElement,
  instrument: ReadInstrument | undefined,
  clef: string,
): StruckVoice | null {
  const head = childOf(note, 'notehead')?.text ?? 'normal';
  const open = descend(note, 'notations', 'technical', 'open') !== undefined;
  const key = instrument?.key ?? null;
  const placed = key === null ? voiceAtPlace(note, clef, head) : null;
  const struck =
    key === null ? placed && { voice: placed, articulation: 'normal' as const } : voiceOfKey(key);
  return struck && refine(struck, head, open);
}
