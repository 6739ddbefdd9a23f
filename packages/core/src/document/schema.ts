/**
 * The lesson document as a person writes it: shape and ranges. What needs more than one field (beats against the
 * meter, stickings against strokes) is looked at in `resolve.ts`.
 *
 * Conventions: every `error` is the fact that is expected; every description completes the reference in docs. Keys are the trade's words.
 */
import { z } from 'zod';
import { DYNAMIC_MARKS } from '../kit/dynamics.ts';
import { LIMBS, VOICES } from '../kit/voice.ts';
import { composeSettingsSchema } from '../lesson/compose-settings.ts';
import { expecting } from '../lesson/expecting.ts';
import { PAPERS } from '../lesson/lesson.ts';
import type { FieldFact, RangeFact } from '../lesson/lesson-fact.ts';
import { LESSON_TEMPI } from '../lesson/tempo-range.ts';

/** The version of the lesson document that this program writes. */
export const LESSON_VERSION = 2;

/**
 * UTF-16 code units of a line, a text, an address and a pattern at most. An address is printed as a code that a phone
 * reads off paper: 300 characters are 77 modules a side at level M (ISO/IEC 18004, version 15), 0.4 mm each in 32 mm.
 */
const LONGEST = { line: 200, text: 10_000, address: 300, pattern: 10_000 } as const;

/** Items of a lesson, of a vocabulary and of anything smaller at most. */
const MOST = { exercises: 1000, cells: 500, few: 100 } as const;

/** Facts that are fully told by their name. */
type Named = FieldFact['fact'];

type RangeName = RangeFact['fact'];

function named(fact: Named): string {
  return expecting({ fact });
}

function atMost(most: number): string {
  return expecting({ fact: 'characters-up-to', most });
}

function text(expected: Named, most: number = LONGEST.line) {
  const error = named(expected);
  return z
    .string({ error })
    .trim()
    .min(1, { error })
    .max(most, { error: atMost(most) });
}

function list<S extends z.ZodType>(item: S, expected: Named, most: number) {
  const error = expecting({ fact: 'items-up-to', most });
  return z.array(item, { error: named(expected) }).max(most, { error });
}

function whole(least: number, most: number, what: RangeName) {
  const error = expecting({ fact: what, least, most });
  return z.int({ error }).min(least, { error }).max(most, { error });
}

function decimal(least: number, most: number, what: RangeName) {
  const error = expecting({ fact: what, least, most });
  return z.number({ error }).min(least, { error }).max(most, { error });
}

function oneOf<const T extends readonly [string, ...string[]]>(values: T) {
  return z.enum(values, { error: expecting({ fact: 'one-of', words: values }) });
}

/** An address on the web that a browser can open. */
function webAddress() {
  const error = named('a-web-address');
  return z
    .string({ error })
    .trim()
    .max(LONGEST.address, { error: atMost(LONGEST.address) })
    .refine((address) => /^https?:\/\/[^\s/]+\S*$/.test(address), { error });
}

function yesNo() {
  return z.boolean({ error: named('true-or-false') });
}

function map(what: Named) {
  return (issue: { readonly code?: string }) =>
    issue.code === 'unrecognized_keys' ? undefined : named(what);
}

const patternText = text('a-pattern-text', LONGEST.pattern);

const lessonName = text('a-lesson-name').regex(/^[^/]+$/, { error: named('a-lesson-name') });

/** Level of a voice: dB relative to the lead voice, or a word. */
const level = z
  .union([decimal(-60, 12, 'level-in-range'), z.enum([...DYNAMIC_MARKS, 'feathered'])], {
    error: expecting({ fact: 'a-level', leastDb: -60, mostDb: 12, words: [...DYNAMIC_MARKS, 'feathered'] }),
  })
  .describe(
    'level relative to the lead voice, in dB (`-6`) or as a dynamic from `ppp` to `fff`, or `feathered`',
  );

const bpm = decimal(LESSON_TEMPI.least, LESSON_TEMPI.most, 'bpm-in-range');

const tempo = z
  .union(
    [
      bpm,
      z.strictObject(
        {
          start: bpm.describe('where the student starts'),
          goal: bpm
            .optional()
            .describe('where the student is going; five steps above the start when left out'),
          step: decimal(1, 60, 'bpm-in-range').optional().describe('one rung of the ladder; 8 when left out'),
        },
        { error: map('tempo-keys') },
      ),
    ],
    { error: named('a-tempo') },
  )
  .describe('quarter notes a minute, in every meter: one number, or `start`, `goal` and `step`');

const groovePart = z.union(
  [
    patternText,
    z.strictObject(
      { pattern: patternText.describe('what the voice plays'), level: level.optional() },
      { error: map('a-groove-part') },
    ),
  ],
  { error: named('a-groove-part') },
);

function byVoice<T extends z.ZodType>(value: T, what: Named) {
  const shape = Object.fromEntries(VOICES.map((voice) => [voice, value.optional()]));
  return z.strictObject(shape as Record<(typeof VOICES)[number], z.ZodOptional<T>>, { error: map(what) });
}

const fill = z
  .union(
    [
      whole(1, 32, 'beat-in-range'),
      z.strictObject(
        {
          bar: whole(1, 256, 'bar-in-range')
            .optional()
            .describe('bar that it begins in; the last when left out'),
          beat: whole(1, 32, 'beat-in-range').optional().describe('beat that it begins on; 1 when left out'),
          silences: text('limbs-and-voices')
            .optional()
            .describe('limbs or voices of the groove that are silent, joined by `+`; all when left out'),
        },
        { error: map('a-fill') },
      ),
    ],
    { error: named('a-fill') },
  )
  .describe(
    'from here to its end the groove is silent: a beat of the last bar, or `bar`, `beat` and `silences`',
  );

const exercise = z.union(
  [
    patternText,
    z.strictObject(
      {
        pattern: z
          .union([patternText, byVoice(patternText, 'patterns-by-voice')], {
            error: named('an-exercise-pattern'),
          })
          .describe('what the comping voice plays, or a pattern text for each voice that plays'),
        name: text('a-name').optional().describe('printed beside the number'),
        sticking: text('hands', LONGEST.pattern)
          .optional()
          .describe('`R`, `L` or `B` (both) for each stroke'),
        notes: text('a-text', LONGEST.text).optional().describe('printed under the exercise'),
        dynamics: text('dynamic-signs', LONGEST.pattern)
          .optional()
          .describe(
            'how loud it is: for each beat `.` for nothing or a dynamic from `ppp` to `fff`, `<` or `>` where it begins to get louder or softer (`p<` for both), `!` where that ends without a dynamic; bars by `|`',
          ),
        above: text('a-text', LONGEST.text).optional().describe('text over each bar, bars by `|`'),
        below: text('a-text', LONGEST.text).optional().describe('text under each bar, bars by `|`'),
        fill: fill.optional(),
        rests: text('limbs-and-voices')
          .optional()
          .describe('limbs or voices of the groove that are silent under it, joined by `+`'),
        keep: yesNo().optional().describe('stays where it is when a page is composed; false when left out'),
        id: text('a-name', LONGEST.pattern)
          .optional()
          .describe('its lasting name, which practice is kept under; its patterns when left out'),
        from: text('an-origin', LONGEST.pattern)
          .optional()
          .describe(
            'what it is a copy of: the lasting name of a lesson, and after a `/` that of the exercise where it is not its patterns',
          ),
      },
      { error: map('an-exercise') },
    ),
  ],
  { error: named('an-exercise') },
);

const vocabularyCell = z.union(
  [
    text('a-cell-or-name'),
    z.strictObject(
      {
        cell: text('a-cell').describe('which slots of the beat are struck'),
        name: text('a-name').optional().describe("the teacher's name for it"),
      },
      { error: map('a-cell-with-name') },
    ),
  ],
  { error: named('a-cell-or-name') },
);

const ending = z
  .union(
    [
      text('ending-voices'),
      z.strictObject(
        {
          voices: text('ending-voices').describe('what is struck, joined by `+`'),
          beat: whole(1, 32, 'beat-in-range').optional().describe('beat of the bar; the last when left out'),
          cell: text('ending-cell')
            .optional()
            .describe('what is struck in that beat; an accent on its last slot when left out'),
        },
        { error: map('ending-voices') },
      ),
    ],
    { error: named('an-ending') },
  )
  .describe('accent that the last bar of the section ends on; it replaces what the pattern has on that beat');

const bars = whole(1, 256, 'bars-in-range');

const section = z.strictObject(
  {
    pattern: bars.optional().describe('bars of the pattern over the groove'),
    time: bars.optional().describe('bars of the groove alone'),
    rest: bars.optional().describe('bars of silence, for the student to play'),
    ending: ending.optional(),
  },
  { error: map('section-keys') },
);

const form = z.strictObject(
  {
    sections: z
      .array(section.optional(), { error: named('sections') })
      .max(MOST.few, { error: expecting({ fact: 'items-up-to', most: MOST.few }) })
      .min(1, { error: named('at-least-one-section') })
      .describe('what is played, in order'),
    repeat: whole(1, 1000, 'times-in-range')
      .optional()
      .describe('how often the sections are gone through; 1 when left out'),
    countIn: whole(0, 8, 'bars-in-range')
      .optional()
      .describe('bars of click before the first bar; 1 when left out'),
  },
  { error: map('form-keys') },
);

const layer = z.union(
  [text('a-layer-voice'), z.array(text('a-layer-voice')).min(1, { error: named('at-least-one-voice') })],
  { error: named('a-layer') },
);

const sheet = z.strictObject(
  {
    paper: oneOf(PAPERS)
      .optional()
      .describe('size of the paper, or `tablet` for a screen held upright; `A4` when left out'),
    counts: yesNo().optional().describe('counts under the notes; false when left out'),
    stickings: yesNo().optional().describe('hands under the notes where written; true when left out'),
    legend: yesNo().optional().describe('a key to the noteheads; true when left out'),
    tickBoxes: yesNo().optional().describe('small boxes to tick off tempi; true when left out'),
    staff: oneOf(['compact', 'full'])
      .optional()
      .describe(
        '`compact`: the pattern on one line; `full`: the whole groove in every exercise; `compact` when left out',
      ),
    scale: decimal(0.6, 2, 'scale-in-range').optional().describe('size of the notation; 1 when left out'),
    perPage: whole(1, 40, 'exercises-in-range')
      .optional()
      .describe('exercises on each page, smaller where they would not fit; as many as go well when left out'),
  },
  { error: map('sheet-settings') },
);

/** What a lesson and each of its sections may say of how and what is played. */
const played = {
  meter: text('a-meter').optional().describe('`3/4`, `6/8`, `12/8`, `2+2+3/8`, …; `4/4` when left out'),
  tempo: tempo.optional(),
  feel: text('a-feel')
    .optional()
    .describe(
      '`even` (as written), `triplet` (2:1), a ratio long : short such as `1.8:1` (of eighths, or ' +
        '`1.5:1 sixteenths`), or `by tempo` (the ratio that drummers use at that tempo); `even` when left out',
    ),
  groove: byVoice(groovePart, 'patterns-by-voice')
    .optional()
    .describe('what repeats under everything: a pattern text, or `pattern` and `level`, for each voice'),
  lead: oneOf(VOICES)
    .optional()
    .describe('the voice that carries the time; the first of the groove when left out'),
  comping: oneOf(VOICES).optional().describe('the voice that plays the exercises; `snare` when left out'),
  balance: byVoice(level, 'levels-by-voice').optional().describe('overrides the levels of the groove'),
  exerciseBalance: byVoice(level, 'levels-by-voice')
    .optional()
    .describe(
      'levels of voices where an exercise plays them, if not as in the groove: a bass drum that is feathered in the groove and answers the snare',
    ),
  limbs: byVoice(oneOf(LIMBS), 'limbs-by-voice').optional().describe('which limb plays a voice'),
  vocabulary: list(vocabularyCell.optional(), 'cells', MOST.cells)
    .optional()
    .describe('what may happen inside a beat: cells such as `..x`, or their names'),
  exercises: list(exercise.optional(), 'pattern-texts', MOST.exercises)
    .optional()
    .describe('numbered patterns, one a line'),
  forms: z
    .record(z.string(), form.optional(), { error: named('forms-by-name') })
    .optional()
    .describe('phrase forms by name'),
  layers: list(layer.optional(), 'layers', MOST.few)
    .optional()
    .describe('how the groove is built up, stage by stage; `pattern` is the exercise'),
  compose: composeSettingsSchema.optional(),
};

const lessonSection = z.strictObject(
  {
    heading: text('a-heading').optional().describe('printed over the section'),
    text: text('a-text', LONGEST.text).optional().describe('what there is to say of it, in small Markdown'),
    ...played,
  },
  { error: map('a-lesson-section') },
);

/** Schema of a lesson as written. Every key but `title` has a default. */
export const lessonSchema = z.strictObject(
  {
    version: z
      .int({ error: named('a-version-number') })
      .optional()
      .describe(`version of the document; ${LESSON_VERSION} when left out`),
    title: text('a-title').describe('printed at the top of the sheet'),
    id: lessonName.optional().describe('its lasting name; the title as a file name when left out'),
    from: lessonName
      .optional()
      .describe('lasting name of the lesson that it is a copy of: its exercises are those of that lesson'),
    by: text('a-name').optional().describe('who wrote it'),
    text: text('a-text', LONGEST.text).optional().describe('printed under the title, in small Markdown'),
    setUp: oneOf(['right-handed', 'left-handed'])
      .optional()
      .describe('which hand and foot lead; `right-handed` when left out'),
    ...played,
    sections: list(lessonSection.optional(), 'lesson-sections', MOST.few)
      .optional()
      .describe(
        'parts of the lesson, in order: each may have `heading` and `text`, and every key from `meter` to `compose`; ' +
          'what one leaves out it takes from the lesson. Exercises outside of a section come first',
      ),
    sheet: sheet.optional().describe('how the page looks'),
    practicePage: webAddress()
      .optional()
      .describe(
        'where the take-home pack of the lesson lies on the web; printed on the sheet as a code to scan',
      ),
  },
  { error: map('a-lesson') },
);

/** A lesson as written, its shape checked. */
export type RawLesson = z.output<typeof lessonSchema>;

/** A section of a lesson as written, its shape checked. */
export type RawSection = NonNullable<NonNullable<RawLesson['sections']>[number]>;
