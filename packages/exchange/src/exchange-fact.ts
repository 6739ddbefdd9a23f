/** Every fact that this room states. */
import type { MidiFact } from './midi/midi-fact.ts';
import type { MusicXmlFact } from './musicxml/musicxml-fact.ts';

/** What is found in a file from another program, expected of it, or likely to repair it. */
export type ExchangeFact = MidiFact | MusicXmlFact;
