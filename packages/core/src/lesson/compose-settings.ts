/**
 * What a lesson says to the composer under `compose:`: how many bars, which bars are allowed, and what makes a
 * bar hard. Everything is optional.
 *
 * Conventions: difficulty is counted in points; one point is about one off-beat stroke that falls alone. Counts
 * are for one bar. Hand speed is in strokes a second at the goal tempo.
 */
import * as z from 'zod/mini';
import { findLoneCellFault } from '../rhythm/cell.ts';
import { expecting } from './expecting.ts';

/** Ways in which the bars of a phrase belong together. */
export const PHRASE_FORMS = ['call-and-answer', 'aaba', 'sentence'] as const;

/** A way in which the bars of a phrase belong together. */
export type PhraseForm = (typeof PHRASE_FORMS)[number];

const cellText = z.string().check(
  z.refine((text) => findLoneCellFault(text) === null, expecting({ fact: 'a-cell' })),
  z.describe('a cell, such as `..x`'),
);

/** What the reference says of a setting. */
type Description = ReturnType<typeof z.describe>;

function amount(what: Description, least: number) {
  return z
    .prefault(
      z
        .strictObject({
          least: z._default(z.int().check(z.minimum(0)), least).check(z.describe('no fewer than this')),
          most: z
            ._default(z.nullable(z.int().check(z.minimum(0))), null)
            .check(z.describe('no more than this; no limit when left out')),
        })
        .check(
          z.refine(
            (range) => range.most === null || range.most >= range.least,
            expecting({ fact: 'most-no-smaller' }),
          ),
        ),
      {},
    )
    .check(what);
}

const limitsSchema = z
  .prefault(
    z.strictObject({
      strokes: amount(z.describe('strokes in a bar'), 1),
      rests: amount(z.describe('silent beats in a bar'), 0),
      start: z
        ._default(z.nullable(z.array(cellText)), null)
        .check(z.describe('the only cells a bar may start with')),
      neverStart: z._default(z.array(cellText), []).check(z.describe('cells a bar may not start with')),
      beats: z
        ._default(
          z.record(
            z.string().check(z.regex(/^[1-9]\d?$/, expecting({ fact: 'a-beat-number' }))),
            z.array(cellText),
          ),
          {},
        )
        .check(z.describe('the only cells allowed on a beat, by the number of the beat')),
      overBarLine: z
        ._default(z.boolean(), true)
        .check(z.describe('whether an off-beat stroke at the end may hang over a silent 1 of the next bar')),
      handSpeed: z
        ._default(z.number().check(z.positive()), 7)
        .check(
          z.describe(
            'strokes a second that one hand keeps up at the goal tempo, three in a row; two may come 10/7 as fast; a foot three quarters of both',
          ),
        ),
      step: z
        ._default(z.number().check(z.positive()), 1)
        .check(z.describe('largest step in difficulty that is always allowed, in points')),
      difficulty: z
        .prefault(
          z.strictObject({
            least: z._default(z.nullable(z.number()), null).check(z.describe('easiest bar, in points')),
            most: z
              ._default(z.nullable(z.number()), null)
              .check(z.describe('hardest bar, in points; all but the hardest fiftieth when left out')),
          }),
          {},
        )
        .check(z.describe('range of difficulty, in points')),
    }),
    {},
  )
  .check(z.describe('which bars are allowed'));

function weight(points: number, what: Description) {
  return z._default(z.number().check(z.minimum(0), z.maximum(100)), points).check(what);
}

const weightsSchema = z
  .prefault(
    z.strictObject({
      alone: weight(1, z.describe('each off-beat stroke that no other limb plays with')),
      foot: weight(
        0.5,
        z.describe('each stroke that a foot or the other hand plays with, but not the lead hand'),
      ),
      lead: weight(0.05, z.describe('each stroke that the lead hand plays with')),
      switch: weight(
        0.15,
        z.describe(
          'each change between playing with the lead hand, between its strokes, and leaving it alone',
        ),
      ),
      unison: weight(
        0.3,
        z.describe(
          'each moment in which two limbs of the exercise strike together, beside the one stroke that it counts as',
        ),
      ),
      interlock: weight(
        0.4,
        z.describe('each time that a stroke of one limb follows one of another within a beat'),
      ),
      pulse: weight(
        0.4,
        z.describe(
          'evidence against the pulse (Povel and Essens): beats that a stroke hangs over or hides, and silent ones that nobody plays',
        ),
      ),
      lhl: weight(0, z.describe('syncopation of Longuet-Higgins and Lee')),
      wnbd: weight(0.05, z.describe('weighted distance of notes to beats (Gómez and others)')),
      offBeatness: weight(0, z.describe('strokes on places coprime with the bar (Toussaint)')),
      keith: weight(0, z.describe('strokes that do not start on a multiple of their own length (Keith)')),
      density: weight(0.1, z.describe('each stroke')),
      silence: weight(0.25, z.describe('silence on beat 1')),
      memory: weight(0.2, z.describe('each beat of a later bar that no bar before it has')),
      change: weight(0.15, z.describe('each change from one cell to another')),
      speed: weight(
        0.5,
        z.describe('hand speed: each three strokes in a row at the limit; less when slower, or for two'),
      ),
      dynamics: weight(
        0.25,
        z.describe('each change between ghost note, stroke and accent, and each flam, drag or buzz'),
      ),
    }),
    {},
  )
  .check(z.describe('points of difficulty for each thing that makes a bar hard'));

/** Schema of the lesson's `compose:` key. Strict: unknown keys are refused; parsing fills in every default. */
export const composeSettingsSchema = z
  .prefault(
    z.strictObject({
      count: z
        ._default(z.int().check(z.minimum(1), z.maximum(400)), 24)
        .check(z.describe('how many exercises')),
      seed: z
        ._default(z.union([z.int().check(z.minimum(0), z.maximum(2 ** 32 - 1)), z.string()]), 1)
        .check(z.describe('another seed gives another page; the same seed always gives the same page')),
      bars: z._default(z.int().check(z.minimum(1), z.maximum(8)), 1).check(z.describe('bars in an exercise')),
      phrase: z
        ._default(z.nullable(z.enum(PHRASE_FORMS)), null)
        .check(
          z.describe(
            'what holds the bars of an exercise together: `call-and-answer` in 2, 4 or 8 bars, `aaba` or `sentence` in 4 or 8; nothing when left out',
          ),
        ),
      idiom: z
        ._default(z.number().check(z.minimum(0), z.maximum(1)), 0.5)
        .check(
          z.describe(
            'how far a page quotes figures of the trade: 0 not at all, every move counts; 1 as its themes',
          ),
        ),
      headings: z
        ._default(z.boolean(), false)
        .check(z.describe('whether the first exercise of each block is named after its figure')),
      limits: limitsSchema,
      weights: weightsSchema,
    }),
    {},
  )
  .check(z.describe('what the composer goes by'));

/** What a lesson says to the composer, with every default filled in. */
export type ComposeSettings = z.output<typeof composeSettingsSchema>;

/** Which bars are allowed. */
export type ComposeLimits = ComposeSettings['limits'];

/** Points of difficulty for each thing that makes a bar hard. */
export type ComposeWeights = ComposeSettings['weights'];

/** What holds where a lesson says nothing. */
export const DEFAULT_COMPOSE_SETTINGS: ComposeSettings = composeSettingsSchema.parse({});
