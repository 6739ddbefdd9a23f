/**
 * What the notations of a note say of its stroke.
 * Source: MusicXML 4.0, elements accent, strong-accent, notehead, tremolo, fingering; attribute dynamics.
 */
import { childOf, childrenOf, descend, type LeadDb, type XmlElement } from '@shedbook/core';
import { dynamicsPercentToLevelDb } from './note.ts';

/** The touch of a written stroke. */
export interface ReadTouch {
  readonly accent: boolean;
  readonly ghost: boolean;
  readonly buzz: boolean;
  readonly sticking: 'R' | 'L' | 'B' | null;
  /** From the `dynamics` attribute, 0 is forte; null where there is none. */
  readonly levelDb: LeadDb | null;
}

/** Fewest strokes through a stem that stand for a roll rather than for counted notes. */
const ROLL_MARKS = 3;

function inNotations(note: XmlElement, ...path: readonly string[]): XmlElement | undefined {
  return childrenOf(note, 'notations')
    .map((notations) => descend(notations, ...path))
    .find((found) => found !== undefined);
}

function isRoll(tremolo: XmlElement | undefined): boolean {
  if (!tremolo) return false;
  return tremolo.attributes['type'] === 'unmeasured' || Number(tremolo.text) >= ROLL_MARKS;
}

function stickingOf(note: XmlElement): ReadTouch['sticking'] {
  const text = inNotations(note, 'technical', 'fingering')?.text;
  return text === 'R' || text === 'L' || text === 'B' ? text : null;
}

/** Reads the touch of a note. */
export function readTouch(note: XmlElement): ReadTouch {
  const articulations = inNotations(note, 'articulations');
  const percent = Number(note.attributes['dynamics'] ?? Number.NaN);
  return {
    accent: (childOf(articulations, 'accent') ?? childOf(articulations, 'strong-accent')) !== undefined,
    ghost: childOf(note, 'notehead')?.attributes['parentheses'] === 'yes',
    buzz: isRoll(inNotations(note, 'ornaments', 'tremolo')),
    sticking: stickingOf(note),
    levelDb: percent > 0 ? dynamicsPercentToLevelDb(percent) : null,
  };
}
