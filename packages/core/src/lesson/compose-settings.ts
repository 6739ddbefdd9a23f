/**
 * What a lesson says to the composer under `compose:`: how many bars, which bars are allowed, and what makes a
 * bar hard. Everything is optional.
 *
 * Conventions: difficulty is counted in points; one point is about one off-beat stroke that falls alone. Counts
 * are for one bar. Hand speed is in strokes a second at the goal tempo.
 */
import { z } from 'zod';
import { findCellFault } from '../rhythm/cell.ts';
import { expecting } from './expecting.ts';

/** Ways in which the bars of a phrase belong together. */
export const PHRASE_FORMS = ['call-and-answer', 'aaba', 'sentence'] as const;

/** A way in which the bars of a phrase belong together. */
export type PhraseForm = (typeof PHRASE_FORMS)[number];

const cellText = z
  .string()
  .refine((text) => findCellFault(text) === null, expecting({ fact: 'a-cell' }))
  .describe('a cell, such as `..x`');

function amount(what: string, least: number) {
  return z
    .strictObject({
      least: z.number().int().min(0).default(least).describe('no fewer than this'),
      most: z
        .number()
        .int()
        .min(0)
        .nullable()
        .default(null)
        .describe('no more than this; no limit when left out'),
    })
    .refine(
      (range) => range.most === null || range.most >= range.least,
      expecting({ fact: 'most-no-smaller' }),
    )
    .prefault({})
    .describe(what);
}

const limitsSchema = z
  .strictObject({
    strokes: amount('strokes in a bar', 1),
    rests: amount('silent beats in a bar', 0),
    start: z.array(cellText).nullable().default(null).describe('the only cells a bar may start with'),
    neverStart: z.array(cellText).default([]).describe('cells a bar may not start with'),
    beats: z
      .record(z.string().regex(/^[1-9]\d?$/, expecting({ fact: 'a-beat-number' })), z.array(cellText))
      .default({})
      .describe('the only cells allowed on a beat, by the number of the beat'),
    overBarLine: z
      .boolean()
      .default(true)
      .describe('whether an off-beat stroke at the end may hang over a silent 1 of the next bar'),
    handSpeed: z
      .number()
      .positive()
      .default(7)
      .describe('strokes a second that one hand can keep up at the goal tempo; a foot three quarters of it'),
    step: z
      .number()
      .positive()
      .default(1)
      .describe('largest step in difficulty that is always allowed, in points'),
    difficulty: z
      .strictObject({
        least: z.number().nullable().default(null).describe('easiest bar, in points'),
        most: z
          .number()
          .nullable()
          .default(null)
          .describe('hardest bar, in points; all but the hardest fiftieth when left out'),
      })
      .prefault({})
      .describe('range of difficulty, in points'),
  })
  .prefault({})
  .describe('which bars are allowed');

function weight(points: number, what: string) {
  return z.number().min(0).max(100).default(points).describe(what);
}

const weightsSchema = z
  .strictObject({
    alone: weight(1, 'each off-beat stroke that no other limb plays with'),
    foot: weight(0.5, 'each stroke that a foot or the other hand plays with, but not the lead hand'),
    lead: weight(0.05, 'each stroke that the lead hand plays with'),
    switch: weight(
      0.15,
      'each change between playing with the lead hand, between its strokes, and leaving it alone',
    ),
    unison: weight(
      0.3,
      'each moment in which two limbs of the exercise strike together, beside the one stroke that it counts as',
    ),
    interlock: weight(0.4, 'each time that a stroke of one limb follows one of another within a beat'),
    pulse: weight(
      0.4,
      'evidence against the pulse (Povel and Essens): beats that a stroke hangs over or hides, and silent ones that nobody plays',
    ),
    lhl: weight(0, 'syncopation of Longuet-Higgins and Lee'),
    wnbd: weight(0.05, 'weighted distance of notes to beats (Gómez and others)'),
    offBeatness: weight(0, 'strokes on places coprime with the bar (Toussaint)'),
    keith: weight(0, 'strokes that do not start on a multiple of their own length (Keith)'),
    density: weight(0.1, 'each stroke'),
    silence: weight(0.25, 'silence on beat 1'),
    memory: weight(0.2, 'each beat of a later bar that no bar before it has'),
    change: weight(0.15, 'each change from one cell to another'),
    speed: weight(0.5, 'hand speed: each three strokes in a row at the limit; less when slower, or for two'),
    dynamics: weight(0.25, 'each change between ghost note, stroke and accent, and each flam, drag or buzz'),
  })
  .prefault({})
  .describe('points of difficulty for each thing that makes a bar hard');

/** Schema of the lesson's `compose:` key. Strict: unknown keys are refused; parsing fills in every default. */
export const composeSettingsSchema = z
  .strictObject({
    count: z.number().int().min(1).max(400).default(24).describe('how many exercises'),
    seed: z
      .union([
        z
          .number()
          .int()
          .min(0)
          .max(2 ** 32 - 1),
        z.string(),
      ])
      .default(1)
      .describe('another seed gives another page; the same seed always gives the same page'),
    bars: z.number().int().min(1).max(8).default(1).describe('bars in an exercise'),
    phrase: z
      .enum(PHRASE_FORMS)
      .nullable()
      .default(null)
      .describe(
        'what holds the bars of an exercise together: `call-and-answer` in 2, 4 or 8 bars, `aaba` or `sentence` in 4 or 8; nothing when left out',
      ),
    idiom: z
      .number()
      .min(0)
      .max(1)
      .default(0.5)
      .describe(
        'how far a page quotes figures of the trade: 0 not at all, every move counts; 1 as its themes',
      ),
    headings: z
      .boolean()
      .default(false)
      .describe('whether the first exercise of each block is named after its figure'),
    limits: limitsSchema,
    weights: weightsSchema,
  })
  .prefault({})
  .describe('what the composer goes by');

/** What a lesson says to the composer, with every default filled in. */
export type ComposeSettings = z.output<typeof composeSettingsSchema>;

/** Which bars are allowed. */
export type ComposeLimits = ComposeSettings['limits'];

/** Points of difficulty for each thing that makes a bar hard. */
export type ComposeWeights = ComposeSettings['weights'];

/** What holds where a lesson says nothing. */
export const DEFAULT_COMPOSE_SETTINGS: ComposeSettings = composeSettingsSchema.parse({});
