/**
 * Title, author, meter, tempo, feel and beaters of a MusicXML score.
 * Source: MusicXML 4.0, elements work-title, movement-title, creator, time, sound, metronome, swing.
 */
import {
  BEATERS,
  type Beater,
  Bpm,
  childOf,
  childrenOf,
  descend,
  type Feel,
  type Meter,
  parseMeter,
  type XmlElement,
} from '@shedbook/core';
import { BEATER_NAMES } from './directions.ts';

/** The title: of the work, or of the movement. */
export function titleOf(root: XmlElement): string | null {
  return descend(root, 'work', 'work-title')?.text || childOf(root, 'movement-title')?.text || null;
}

/** The first creator. */
export function creatorOf(root: XmlElement): string | null {
  return descend(root, 'identification', 'creator')?.text || null;
}

/** The meter of a `time` element, or null when it is none that a lesson can have. */
export function meterOf(time: XmlElement): Meter | null {
  const beats = childrenOf(time, 'beats').map((each) => each.text);
  const types = new Set(childrenOf(time, 'beat-type').map((each) => each.text));
  return types.size === 1 ? parseMeter(`${beats.join('+')}/${[...types][0]}`) : null;
}

const QUARTERS: Readonly<Record<string, number>> = {
  whole: 4,
  half: 2,
  quarter: 1,
  eighth: 0.5,
  '16th': 0.25,
};

function metronomeBpm(metronome: XmlElement | undefined): Bpm | null {
  const unit = QUARTERS[childOf(metronome, 'beat-unit')?.text ?? ''];
  const perMinute = Number.parseFloat(childOf(metronome, 'per-minute')?.text ?? '');
  if (unit === undefined || !(perMinute > 0)) return null;
  return Bpm(perMinute * unit * (childOf(metronome, 'beat-unit-dot') ? 1.5 : 1));
}

/** Tempo in quarter notes a minute of a direction or sound, or null. */
export function tempoOf(element: XmlElement): Bpm | null {
  const sound = element.name === 'sound' ? element : childOf(element, 'sound');
  const tempo = Number(sound?.attributes['tempo'] ?? Number.NaN);
  if (tempo > 0) return Bpm(tempo);
  const metronome = childrenOf(element, 'direction-type').map((type) => childOf(type, 'metronome'));
  return metronomeBpm(metronome.find((each) => each !== undefined));
}

/** Feel of a direction or sound, or null when it says nothing of swing. */
export function feelOf(element: XmlElement): Feel | null {
  const swing = childOf(element.name === 'sound' ? element : childOf(element, 'sound'), 'swing');
  if (!swing) return null;
  if (childOf(swing, 'straight')) return { kind: 'even' };
  const ratio = Number(childOf(swing, 'first')?.text) / Number(childOf(swing, 'second')?.text);
  if (!(ratio > 0)) return null;
  return {
    kind: 'ratio',
    ratio,
    of: childOf(swing, 'swing-type')?.text === '16th' ? 'sixteenths' : 'eighths',
  };
}

/** What a direction puts into the hands, or null when it says nothing of it. */
export function beaterOf(element: XmlElement): Beater | null {
  const pictures = childrenOf(element, 'direction-type').map(
    (type) => descend(type, 'percussion', 'beater')?.text,
  );
  return BEATERS.find((each) => pictures.includes(BEATER_NAMES[each])) ?? null;
}
