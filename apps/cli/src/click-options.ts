/** The click of recordings and films, as the command line is asked for it. */
import { isSubdivision, type Lesson, SUBDIVISIONS, sectionsOf } from '@shedbook/core';
import type { ClickOptions } from '@shedbook/sound';
import { refuseOption as refuse } from './options.ts';

/** The options as they come, all text. */
export interface ClickOptionsAsked {
  readonly click?: string;
  readonly subdivide?: string;
  readonly gap?: string;
  readonly countAloud?: boolean;
}

/** A click whose meter is that of what it plays along with, or null. */
export type ClickAsked = Omit<ClickOptions, 'meter'> | null;

function readBeats(text: string, lesson: Lesson): readonly number[] {
  const most = Math.max(...sectionsOf(lesson).map(({ meter }) => meter.beats.length));
  const all = Array.from({ length: most }, (_, index) => index + 1);
  if (text === 'all') return all;
  const beats = text.split(',').map(Number);
  return beats.every((beat) => all.includes(beat))
    ? beats
    : refuse('click', text, (expected) => expected.beats({ beats: all.join(',') }));
}

/** Bars with click and bars without, such as `2/2`. */
function readGap(text: string) {
  const [soundingBars, silentBars] = (/^(\d{1,2})\/(\d{1,2})$/.exec(text) ?? []).slice(1).map(Number);
  if (!soundingBars || silentBars === undefined) return refuse('gap', text, (expected) => expected.gap);
  return { soundingBars, silentBars };
}

/**
 * The click that plays along; whoever is counted to hears a click on every beat where no other is asked for.
 * @throws InputError with what was found and what was expected.
 */
export function readClick(
  { click, subdivide, gap, countAloud }: ClickOptionsAsked,
  lesson: Lesson,
): ClickAsked {
  if (!countAloud && click === undefined && subdivide === undefined && gap === undefined) return null;
  const slots = Number(subdivide ?? 1);
  if (!isSubdivision(slots))
    return refuse('subdivide', subdivide ?? '', ({ slots: allowed }) =>
      allowed({ slots: SUBDIVISIONS.join(', ') }),
    );
  return {
    beats: readBeats(click ?? 'all', lesson),
    subdivision: slots,
    ...(gap === undefined ? {} : { gap: readGap(gap) }),
  };
}
