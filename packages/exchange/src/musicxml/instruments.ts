/**
 * The instruments of the drum part: one a voice, and one for the bell of the ride.
 * Source: MusicXML 4.0: `midi-unpitched` is the General MIDI key counted from 1; ids are unique in the score.
 */
import { type Articulation, VOICE_FACTS, VOICES, type Voice } from '@shedbook/core';
import { voiceToKey } from '../midi/key-map.ts';
import { PERCUSSION_CHANNEL } from '../midi/smf.ts';
import { type XmlNode, xml } from '../xml/write-xml.ts';

interface Instrument {
  readonly id: string;
  readonly name: string;
  /** General MIDI key, counted from 0. */
  readonly key: number;
}

const BELL_ID = 'P1-ride-bell';

/** The id of the instrument that plays a stroke. */
export function instrumentId(voice: Voice, articulation: Articulation): string {
  return articulation === 'bell' ? BELL_ID : `P1-${voice}`;
}

const INSTRUMENTS: readonly Instrument[] = [
  ...VOICES.map((voice) => {
    const name = VOICE_FACTS[voice].label;
    return { id: instrumentId(voice, 'normal'), name, key: voiceToKey(voice, 'normal', false) };
  }),
  { id: BELL_ID, name: 'ride bell', key: voiceToKey('ride', 'bell', false) },
];

/** The score-instruments and then the midi-instruments that are used. */
export function instrumentNodes(used: ReadonlySet<string>): readonly XmlNode[] {
  const playing = INSTRUMENTS.filter(({ id }) => used.has(id));
  return [
    ...playing.map(({ id, name }) => xml('score-instrument', { id }, [xml('instrument-name', {}, name)])),
    ...playing.map(({ id, key }) =>
      xml('midi-instrument', { id }, [
        xml('midi-channel', {}, PERCUSSION_CHANNEL),
        xml('midi-unpitched', {}, key + 1),
      ]),
    ),
  ];
}
