/**
 * An exercise in a take whatever feel it was played in: who begins with a new feel plays the old one, and the bars are
 * to be found all the same. What was played is measured against what was asked.
 */
import type { Feel } from '@shedbook/core';
import type { Asked } from '../listened.ts';
import { type Alignment, align } from './align.ts';
import { askedGrid } from './asked-grid.ts';
import type { FormGrid } from './form-grid.ts';
import type { Observations } from './observations.ts';

/** A take that is matched so well is in the feel that was asked: mean match of a written stroke. */
const MATCHED = 0.6;
/** By so much the other feel must match better. */
const BETTER = 0.15;

/** Also what is written as triplets. */
const STRAIGHT: Feel = { kind: 'ratio', ratio: 1, of: 'eighths' };
const TRIPLET: Feel = { kind: 'ratio', ratio: 2, of: 'eighths' };

/** The feel that is played in the place of another; null where nothing swings in beats of three. */
function otherFeel({ lesson: { feel, meter } }: Asked): Feel | null {
  if (feel.kind !== 'even') return STRAIGHT;
  return meter.compound ? null : TRIPLET;
}

/** Where the form lies in a take, and what is asked, with its grid, as if it were asked in the feel that was played. */
export interface AlignedInFeel extends Alignment {
  readonly playedAs: Asked;
  readonly playedGrid: FormGrid;
}

/** The form in the take, or null when nothing can be followed in any feel. */
export function alignInAnyFeel(seen: Observations, asked: Asked, grid: FormGrid): AlignedInFeel | null {
  const found = align(seen, grid);
  const plain = found && { ...found, playedAs: asked, playedGrid: grid };
  const feel = otherFeel(asked);
  if (!feel || (found && found.matchPerStroke >= MATCHED)) return plain;
  const playedAs = { ...asked, lesson: { ...asked.lesson, feel } };
  const playedGrid = askedGrid(playedAs);
  const other = align(seen, playedGrid);
  const isBetter = other && (!found || other.matchPerStroke > found.matchPerStroke + BETTER);
  return isBetter ? { ...other, playedAs, playedGrid } : plain;
}
