/**
 * One event as MusicXML notes: a note for every head, grace notes before it, or a rest.
 *
 * Conventions: a ghost note has its head in parentheses; an open hi-hat and a foot splash have the technical
 * `open`; a buzz is an unmeasured tremolo, one that is held so many tied notes, each with its tremolo; a sticking is a fingering, MusicXML having nothing closer.
 * Source: MusicXML 4.0, elements note, notehead, grace, tremolo, fingering, tuplet; attribute dynamics: percent of
 * forte, which is velocity 90.
 */
import {
  forceToLevelDb,
  GRACE_NOTES,
  type HeadKind,
  headKindOf,
  type LeadDb,
  levelDbToForce,
  type NotatedEvent,
  type NotatedHead,
  type NoteValue,
} from '@shedbook/core';
import { type XmlNode, xml } from '../xml/write-xml.ts';
import type { BeamValue } from './beams.ts';
import { instrumentId } from './instruments.ts';
import { STAFF_PLACES } from './staff-places.ts';

/** What is written of an event beside itself. */
export interface NoteContext {
  /** Number of the voice in the part: that of its layer. */
  readonly voice: number;
  readonly stem: 'up' | 'down';
  /** Duration in divisions: so many parts of a quarter note. */
  readonly duration: number;
  /** `actual` in the time of `normal`, both numbers of notes, or null. */
  readonly tuplet: { readonly actual: number; readonly normal: number } | null;
  /** The tuplet bracket that begins or ends here. */
  readonly bracket: { readonly type: 'start' | 'stop'; readonly shown: boolean } | null;
  readonly beams: readonly BeamValue[];
  /** Whether a rest fills the bar. */
  readonly wholeBar: boolean;
  /** Level of a head in dB, 0 is forte. */
  readonly levelDb: (head: NotatedHead) => LeadDb;
}

const TYPES: Readonly<Record<NoteValue['base'], string>> = {
  1: 'whole',
  2: 'half',
  4: 'quarter',
  8: 'eighth',
  16: '16th',
  32: '32nd',
  64: '64th',
};

/** The name of a note value. */
export function noteTypeName(base: NoteValue['base']): string {
  return TYPES[base];
}

/** Level to the `dynamics` attribute, in percent of forte, to a hundredth. */
export function levelDbToDynamicsPercent(levelDb: LeadDb): number {
  return Math.round(10_000 * levelDbToForce(levelDb)) / 100;
}

/** The `dynamics` attribute to level, in dB. */
export function dynamicsPercentToLevelDb(percent: number): LeadDb {
  return forceToLevelDb(percent / 100);
}

function valueNodes({ value }: NotatedEvent, { tuplet }: NoteContext): readonly XmlNode[] {
  return [
    xml('type', {}, TYPES[value.base]),
    ...(value.dots === 1 ? [xml('dot')] : []),
    ...(tuplet
      ? [
          xml('time-modification', {}, [
            xml('actual-notes', {}, tuplet.actual),
            xml('normal-notes', {}, tuplet.normal),
          ]),
        ]
      : []),
  ];
}

function tupletNode({ bracket }: NoteContext): XmlNode | null {
  if (!bracket) return null;
  const { type, shown } = bracket;
  return xml('tuplet', type === 'start' ? { type, bracket: shown ? 'yes' : 'no' } : { type });
}

function notations(nodes: readonly (XmlNode | null)[]): XmlNode | null {
  const present = nodes.filter((node) => node !== null);
  return present.length > 0 ? xml('notations', {}, present) : null;
}

function unpitched({ voice }: NotatedHead): XmlNode {
  const { step, octave } = STAFF_PLACES[voice];
  return xml('unpitched', {}, [xml('display-step', {}, step), xml('display-octave', {}, octave)]);
}

/** Noteheads by their names in MusicXML; the ring of a splash is a sign for open. */
const XML_HEADS: Readonly<Record<HeadKind, string>> = {
  normal: 'normal',
  x: 'x',
  slashed: 'slashed',
  diamond: 'diamond',
  ringed: 'x',
  slash: 'slash',
  plus: 'cross',
};

function notehead({ voice, articulation, ghost }: NotatedHead): XmlNode | null {
  const head = XML_HEADS[headKindOf(voice, articulation)];
  if (head === 'normal' && !ghost) return null;
  return xml('notehead', ghost ? { parentheses: 'yes' } : {}, head);
}

function technical(head: NotatedHead): XmlNode | null {
  const open = head.voice === 'hihat-open' || head.articulation === 'splash';
  if (!open && head.sticking === null) return null;
  return xml('technical', {}, [
    head.sticking === null ? null : xml('fingering', { placement: 'above' }, head.sticking),
    open ? xml('open') : null,
  ]);
}

/** Both ends of ties: of what goes on from the note before, and into the next. */
function tieNodes(head: NotatedHead, name: 'tie' | 'tied'): readonly XmlNode[] {
  return [
    ...(head.isHeld ? [xml(name, { type: 'stop' })] : []),
    ...(head.goesOn ? [xml(name, { type: 'start' })] : []),
  ];
}

function headNotations(head: NotatedHead, first: boolean, context: NoteContext): XmlNode | null {
  const buzz = head.articulation === 'buzz';
  return notations([
    ...tieNodes(head, 'tied'),
    first ? tupletNode(context) : null,
    buzz ? xml('ornaments', {}, [xml('tremolo', { type: 'unmeasured' }, 0)]) : null,
    technical(head),
    head.accent ? xml('articulations', {}, [xml('accent')]) : null,
  ]);
}

function graceBeam(index: number, count: number, level: number): XmlNode | null {
  return count < 2 ? null : xml('beam', { number: level }, index === 0 ? 'begin' : 'end');
}

/**
 * A flam's grace note is an eighth, a drag's two are beamed sixteenths; all are slashed, since a grace note without
 * a slash takes its time from the stroke and programs then play the stroke late.
 */
function graceNotes(head: NotatedHead, context: NoteContext): readonly XmlNode[] {
  const count = GRACE_NOTES[head.articulation];
  return Array.from({ length: count }, (_, i) =>
    xml('note', {}, [
      xml('grace', { slash: 'yes' }),
      unpitched(head),
      xml('instrument', { id: instrumentId(head.voice, head.articulation) }),
      xml('voice', {}, context.voice),
      xml('type', {}, count === 1 ? 'eighth' : '16th'),
      xml('stem', {}, context.stem),
      notehead(head),
      graceBeam(i, count, 1),
      graceBeam(i, count, 2),
    ]),
  );
}

function restNode(event: NotatedEvent, context: NoteContext): XmlNode {
  const { wholeBar, duration, voice } = context;
  return xml('note', {}, [
    xml('rest', wholeBar ? { measure: 'yes' } : {}),
    xml('duration', {}, duration),
    xml('voice', {}, voice),
    ...(wholeBar ? [] : valueNodes(event, context)),
    notations([tupletNode(context)]),
  ]);
}

function headNode(event: NotatedEvent, head: NotatedHead, first: boolean, context: NoteContext): XmlNode {
  const dynamics = levelDbToDynamicsPercent(context.levelDb(head));
  return xml('note', { dynamics }, [
    first ? null : xml('chord'),
    unpitched(head),
    xml('duration', {}, context.duration),
    ...tieNodes(head, 'tie'),
    xml('instrument', { id: instrumentId(head.voice, head.articulation) }),
    xml('voice', {}, context.voice),
    ...valueNodes(event, context),
    xml('stem', {}, context.stem),
    notehead(head),
    ...(first ? context.beams.map((value, i) => xml('beam', { number: i + 1 }, value)) : []),
    headNotations(head, first, context),
  ]);
}

/** The notes of one event. */
export function noteNodes(event: NotatedEvent, context: NoteContext): readonly XmlNode[] {
  if (event.kind === 'rest') return [restNode(event, context)];
  return [
    ...event.heads.flatMap((head) => graceNotes(head, context)),
    ...event.heads.map((head, i) => headNode(event, head, i === 0, context)),
  ];
}
