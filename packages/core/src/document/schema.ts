/**
 * The lesson document as a person writes it: shape and ranges. What needs more than one field (beats against the
 * meter, stickings against strokes) is looked at in `resolve.ts`.
 *
 * Conventions: every `error` is the fact that is expected; every description completes the reference in docs. Keys are the trade's words.
 */
import * as z from 'zod/mini';
import { DYNAMIC_MARKS } from '../kit/dynamics.ts';
import { HOW_WORDS } from '../kit/how.data.ts';
import { BEATERS, LIMBS, SET_UPS, VOICES } from '../kit/voice.ts';
import { composeSettingsSchema } from '../lesson/compose-settings.ts';
import { EXAMPLE_TIMES } from '../lesson/example.ts';
import { expecting } from '../lesson/expecting.ts';
import { PAPERS } from '../lesson/lesson.ts';
import { MEDIUM_TYPES } from '../lesson/media.data.ts';
import { NUMBERINGS } from '../lesson/numbering.ts';
import { LESSON_TEMPI } from '../lesson/tempo-range.ts';
import {
  decimal,
  LONGEST,
  list,
  MOST,
  map,
  type Named,
  named,
  oneOf,
  text,
  webAddress,
  whole,
  yesNo,
} from './fields.ts';

/** The version of the lesson document that this program writes. */
export const LESSON_VERSION = 2;

const patternText = text('a-pattern-text', LONGEST.pattern);

const lessonName = text('a-lesson-name').check(z.regex(/^[^/]+$/, { error: named('a-lesson-name') }));

/** Level of a voice: dB relative to the lead voice, or a word. */
const level = z
  .union([decimal(-60, 12, 'level-in-range'), z.enum([...DYNAMIC_MARKS, 'feathered'])], {
    error: expecting({ fact: 'a-level', leastDb: -60, mostDb: 12, words: [...DYNAMIC_MARKS, 'feathered'] }),
  })
  .check(
    z.describe(
      'level relative to the lead voice, in dB (`-6`) or as a dynamic from `ppp` to `fff`, or `feathered`',
    ),
  );

const bpm = decimal(LESSON_TEMPI.least, LESSON_TEMPI.most, 'bpm-in-range');

const tempo = z
  .union(
    [
      bpm,
      z.strictObject(
        {
          start: bpm.check(z.describe('where the student starts')),
          goal: z
            .optional(bpm)
            .check(z.describe('where the student is going; five steps above the start when left out')),
          step: z
            .optional(decimal(1, 60, 'bpm-in-range'))
            .check(z.describe('one rung of the ladder; 8 when left out')),
        },
        { error: map('tempo-keys') },
      ),
    ],
    { error: named('a-tempo') },
  )
  .check(z.describe('quarter notes a minute, in every meter: one number, or `start`, `goal` and `step`'));

const howText = text('how-words');

const HOW_LIST = `${HOW_WORDS.map((word) => `\`${word}\``).join(', ')} or words of your own, joined by \`,\``;

const groovePart = z.union(
  [
    patternText,
    z.strictObject(
      {
        pattern: patternText.check(z.describe('what the voice plays')),
        level: z.optional(level),
        how: z.optional(howText).check(z.describe(`how it is played: ${HOW_LIST}`)),
      },
      { error: map('a-groove-part') },
    ),
  ],
  { error: named('a-groove-part') },
);

function byVoice<T extends z.ZodMiniType>(value: T, what: Named) {
  const shape = Object.fromEntries(VOICES.map((voice) => [voice, z.optional(value)]));
  return z.strictObject(shape as Record<(typeof VOICES)[number], z.ZodMiniOptional<T>>, { error: map(what) });
}

const fill = z
  .union(
    [
      whole(1, 32, 'beat-in-range'),
      z.strictObject(
        {
          bar: z
            .optional(whole(1, 256, 'bar-in-range'))
            .check(z.describe('bar that it begins in; the last when left out')),
          beat: z
            .optional(whole(1, 32, 'beat-in-range'))
            .check(z.describe('beat that it begins on; 1 when left out')),
          silences: z
            .optional(text('limbs-and-voices'))
            .check(
              z.describe('limbs or voices of the groove that are silent, joined by `+`; all when left out'),
            ),
        },
        { error: map('a-fill') },
      ),
    ],
    { error: named('a-fill') },
  )
  .check(
    z.describe(
      'from here to its end the groove is silent: a beat of the last bar, or `bar`, `beat` and `silences`',
    ),
  );

/** Bars of an exercise: `3`, or `1-4`. */
const stretch = z.union([whole(1, 256, 'bar-in-range'), text('some-bars')], { error: named('some-bars') });

const repeat = z.union(
  [
    whole(1, 256, 'bar-in-range'),
    text('some-bars'),
    z.strictObject(
      {
        bars: stretch.check(z.describe('bars that are the same each time, such as `1-3`')),
        times: z
          .optional(whole(2, 32, 'times-in-range'))
          .check(z.describe('how often they are played; 2, or once for each ending, when left out')),
        endings: z
          .optional(list(stretch, 'endings-of-repeat', 32))
          .check(
            z.describe(
              'what ends each time: first and second ending, such as `[4, 5]`, or more; the first one serves all times that have none of their own',
            ),
          ),
      },
      { error: map('a-repeat') },
    ),
  ],
  { error: named('a-repeat') },
);

const repeats = z
  .union([repeat, list(repeat, 'a-repeat', MOST.few)], { error: named('a-repeat') })
  .check(
    z.describe(
      'bars that are played twice, such as `1-4`, or `bars`, `times` and `endings`; a list where there are several',
    ),
  );

const barRepeats = z
  .union([stretch, list(stretch, 'some-bars', MOST.exercises)], { error: named('some-bars') })
  .check(
    z.describe(
      'bars that are printed as a repeat sign, since they are played like the one before (`2`) or the two before (`3-4`); a list where there are several',
    ),
  );

const exampleTimes = whole(1, EXAMPLE_TIMES.most, 'times-in-range');

const example = z
  .union(
    [
      yesNo(),
      exampleTimes,
      z.strictObject(
        {
          times: z
            .optional(exampleTimes)
            .check(z.describe(`how often it goes round first; ${EXAMPLE_TIMES.usual} when left out`)),
          form: z
            .optional(text('a-form-name'))
            .check(
              z.describe(
                'name of the form that follows; the first that has more than one section when left out',
              ),
            ),
        },
        { error: map('an-example') },
      ),
    ],
    { error: named('an-example') },
  )
  .check(
    z.describe(
      'shown to the student before it is played, in recordings, films and wherever it is practised: `true`, how often it goes round before it is shown in a phrase form, or `times` and `form`; false when left out',
    ),
  );

const medium = z.union(
  [
    text('a-file-name'),
    z.strictObject(
      {
        file: text('a-file-name').check(z.describe('its path from the folder of the lesson, with `/`')),
        says: z
          .optional(text('a-text'))
          .check(z.describe('what it shows: printed under it, and said to those who do not see it')),
      },
      { error: map('a-medium') },
    ),
  ],
  { error: named('a-medium') },
);

const media = z
  .union([medium, list(z.optional(medium), 'media', MOST.few)], { error: named('media') })
  .check(
    z.describe(
      `pictures, sound and video of your own beside it: a path from the folder of the lesson, or \`file\` and \`says\`; a list where there are several. Endings: ${Object.keys(MEDIUM_TYPES).join(', ')}`,
    ),
  );

const handsText = text('hands', LONGEST.pattern);

const exercise = z.union(
  [
    patternText,
    z.strictObject(
      {
        pattern: z
          .union([patternText, byVoice(patternText, 'patterns-by-voice')], {
            error: named('an-exercise-pattern'),
          })
          .check(z.describe('what the comping voice plays, or a pattern text for each voice that plays')),
        name: z.optional(text('a-name')).check(z.describe('printed beside the number')),
        sticking: z
          .optional(z.union([handsText, byVoice(handsText, 'hands-by-voice')], { error: named('hands') }))
          .check(
            z.describe(
              '`R`, `L` or `B` (both) for each stroke of the comping voice, or such a text for each voice that the exercise plays',
            ),
          ),
        notes: z.optional(text('a-text', LONGEST.text)).check(z.describe('printed under the exercise')),
        media: z.optional(media),
        how: z
          .optional(z.union([howText, byVoice(howText, 'how-by-voice')], { error: named('how-words') }))
          .check(
            z.describe(
              'how it is played, in the words of `groove.VOICE.how`, or such words for each voice that is played otherwise under it',
            ),
          ),
        dynamics: z
          .optional(text('dynamic-signs', LONGEST.pattern))
          .check(
            z.describe(
              'how loud it is: for each beat `.` for nothing or a dynamic from `ppp` to `fff`, `<` or `>` where it begins to get louder or softer (`p<` for both), `!` where that ends without a dynamic; bars by `|`',
            ),
          ),
        above: z.optional(text('a-text', LONGEST.text)).check(z.describe('text over each bar, bars by `|`')),
        below: z.optional(text('a-text', LONGEST.text)).check(z.describe('text under each bar, bars by `|`')),
        fill: z.optional(fill),
        repeats: z.optional(repeats),
        barRepeats: z.optional(barRepeats),
        rests: z
          .optional(text('limbs-and-voices'))
          .check(z.describe('limbs or voices of the groove that are silent under it, joined by `+`')),
        example: z.optional(example),
        keep: z
          .optional(yesNo())
          .check(z.describe('stays where it is when a page is composed; false when left out')),
        id: z
          .optional(text('a-name', LONGEST.pattern))
          .check(z.describe('its lasting name, which practice is kept under; its patterns when left out')),
        from: z
          .optional(text('an-origin', LONGEST.pattern))
          .check(
            z.describe(
              'what it is a copy of: the lasting name of a lesson, and after a `/` that of the exercise where it is not its patterns',
            ),
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
        cell: text('a-cell').check(z.describe('which slots of the beat are struck')),
        name: z.optional(text('a-name')).check(z.describe("the teacher's name for it")),
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
          voices: text('ending-voices').check(z.describe('what is struck, joined by `+`')),
          beat: z
            .optional(whole(1, 32, 'beat-in-range'))
            .check(z.describe('beat of the bar; the last when left out')),
          cell: z
            .optional(text('ending-cell'))
            .check(z.describe('what is struck in that beat; an accent on its last slot when left out')),
        },
        { error: map('ending-voices') },
      ),
    ],
    { error: named('an-ending') },
  )
  .check(
    z.describe(
      'accent that the last bar of the section ends on; it replaces what the pattern has on that beat',
    ),
  );

const bars = whole(1, 256, 'bars-in-range');

const clickBeat = whole(1, 32, 'beat-in-range');

const click = z
  .union([z.enum(['all', 'none']), clickBeat, list(clickBeat, 'click-beats', MOST.few)], {
    error: named('click-beats'),
  })
  .check(
    z.describe(
      'where the click falls in these bars, whatever else is chosen: `all` beats, `none`, a beat such as `1`, or some such as `[2, 4]`; where one wants it when left out',
    ),
  );

const section = z.strictObject(
  {
    pattern: z.optional(bars).check(z.describe('bars of the pattern over the groove')),
    time: z.optional(bars).check(z.describe('bars of the groove alone')),
    rest: z.optional(bars).check(z.describe('bars of silence, for the student to play')),
    ending: z.optional(ending),
    click: z.optional(click),
  },
  { error: map('section-keys') },
);

const form = z.strictObject(
  {
    sections: z
      .array(z.optional(section), { error: named('sections') })
      .check(
        z.maxLength(MOST.few, { error: expecting({ fact: 'items-up-to', most: MOST.few }) }),
        z.minLength(1, { error: named('at-least-one-section') }),
        z.describe('what is played, in order'),
      ),
    repeat: z
      .optional(whole(1, 1000, 'times-in-range'))
      .check(z.describe('how often the sections are gone through; 1 when left out')),
    countIn: z
      .optional(whole(0, 8, 'bars-in-range'))
      .check(z.describe('bars of click before the first bar; 1 when left out')),
  },
  { error: map('form-keys') },
);

const layer = z.union(
  [
    text('a-layer-voice'),
    z.array(text('a-layer-voice')).check(z.minLength(1, { error: named('at-least-one-voice') })),
  ],
  { error: named('a-layer') },
);

const sheet = z.strictObject(
  {
    paper: z
      .optional(oneOf(PAPERS))
      .check(z.describe('size of the paper, or `tablet` for a screen held upright; `A4` when left out')),
    counts: z.optional(yesNo()).check(z.describe('counts under the notes; false when left out')),
    stickings: z
      .optional(yesNo())
      .check(z.describe('hands under the notes where written; true when left out')),
    legend: z.optional(yesNo()).check(z.describe('a key to the noteheads; true when left out')),
    tickBoxes: z.optional(yesNo()).check(z.describe('small boxes to tick off tempi; true when left out')),
    staff: z
      .optional(oneOf(['compact', 'full']))
      .check(
        z.describe(
          '`compact`: the pattern on one line; `full`: the whole groove in every exercise; `compact` when left out',
        ),
      ),
    scale: z
      .optional(decimal(0.6, 2, 'scale-in-range'))
      .check(z.describe('size of the notation; 1 when left out')),
    numbering: z
      .optional(oneOf(NUMBERINGS))
      .check(
        z.describe(
          '`through`: exercises have one row of numbers; `anew`: each section begins anew, with its letter before (A1, A2, B1); `through` when left out',
        ),
      ),
    perPage: z
      .optional(whole(1, 40, 'exercises-in-range'))
      .check(
        z.describe(
          'exercises on each page, smaller where they would not fit; as many as go well when left out',
        ),
      ),
  },
  { error: map('sheet-settings') },
);

/** What a lesson and each of its sections may say of how and what is played. */
const played = {
  meter: z
    .optional(text('a-meter'))
    .check(z.describe('`3/4`, `6/8`, `12/8`, `2+2+3/8`, …; `4/4` when left out')),
  tempo: z.optional(tempo),
  feel: z
    .optional(text('a-feel'))
    .check(
      z.describe(
        '`even` (as written), `triplet` (2:1), a ratio long : short such as `1.8:1` (of eighths, or ' +
          '`1.5:1 sixteenths`), or `by tempo` (the ratio that drummers use at that tempo); `even` when left out',
      ),
    ),
  playedWith: z.optional(oneOf(BEATERS)).check(z.describe('what the hands hold; `sticks` when left out')),
  groove: z
    .optional(byVoice(groovePart, 'patterns-by-voice'))
    .check(
      z.describe(
        'what repeats under everything: a pattern text, or `pattern`, `level` and `how`, for each voice; a plain ' +
          'swing groove when left out, none for `{}`',
      ),
    ),
  lead: z
    .optional(oneOf(VOICES))
    .check(
      z.describe(
        'the voice that carries the time; when left out the first of the groove, and without one that of the exercises',
      ),
    ),
  comping: z
    .optional(oneOf(VOICES))
    .check(z.describe('the voice that plays the exercises; `snare` when left out')),
  balance: z
    .optional(byVoice(level, 'levels-by-voice'))
    .check(z.describe('overrides the levels of the groove')),
  exerciseBalance: z
    .optional(byVoice(level, 'levels-by-voice'))
    .check(
      z.describe(
        'levels of voices where an exercise plays them, if not as in the groove: a bass drum that is feathered in the groove and answers the snare',
      ),
    ),
  limbs: z.optional(byVoice(oneOf(LIMBS), 'limbs-by-voice')).check(z.describe('which limb plays a voice')),
  how: z
    .optional(byVoice(howText, 'how-by-voice'))
    .check(
      z.describe(
        'how voices are played, in the words of `groove.VOICE.how`; overrides those, and holds in exercises too',
      ),
    ),
  vocabulary: z
    .optional(list(z.optional(vocabularyCell), 'cells', MOST.cells))
    .check(z.describe('what may happen inside a beat: cells such as `..x`, or their names')),
  exercises: z
    .optional(list(z.optional(exercise), 'pattern-texts', MOST.exercises))
    .check(z.describe('numbered patterns, one a line')),
  forms: z
    .optional(z.record(z.string(), z.optional(form), { error: named('forms-by-name') }))
    .check(z.describe('phrase forms by name')),
  layers: z
    .optional(list(z.optional(layer), 'layers', MOST.few))
    .check(z.describe('how the groove is built up, stage by stage; `pattern` is the exercise')),
  compose: z.optional(composeSettingsSchema),
};

const lessonSection = z.strictObject(
  {
    heading: z.optional(text('a-heading')).check(z.describe('printed over the section')),
    before: z
      .optional(text('a-heading'))
      .check(z.describe('heading of a section above it, which a student must have first')),
    text: z
      .optional(text('a-text', LONGEST.text))
      .check(
        z.describe(
          'what there is to say of it, in small Markdown; `![what it shows](grip.png)` in a line of its own shows a file',
        ),
      ),
    media: z.optional(media),
    ...played,
  },
  { error: map('a-lesson-section') },
);

/** Schema of a lesson as written. Every key but `title` has a default. */
export const lessonSchema = z.strictObject(
  {
    version: z
      .optional(z.int({ error: named('a-version-number') }))
      .check(z.describe(`version of the document; ${LESSON_VERSION} when left out`)),
    title: text('a-title').check(z.describe('printed at the top of the sheet')),
    id: z.optional(lessonName).check(z.describe('its lasting name; the title as a file name when left out')),
    from: z
      .optional(lessonName)
      .check(
        z.describe('lasting name of the lesson that it is a copy of: its exercises are those of that lesson'),
      ),
    by: z.optional(text('a-name')).check(z.describe('who wrote it')),
    text: z
      .optional(text('a-text', LONGEST.text))
      .check(z.describe('printed under the title, in small Markdown')),
    media: z.optional(media),
    setUp: z
      .optional(oneOf(SET_UPS))
      .check(z.describe('which hand and foot lead; `right-handed` when left out')),
    ...played,
    sections: z
      .optional(list(z.optional(lessonSection), 'lesson-sections', MOST.few))
      .check(
        z.describe(
          'parts of the lesson, in order: each may have `heading`, `before`, `text` and `media`, and every key from `meter` to `compose`; ' +
            'what one leaves out it takes from the lesson. Exercises outside of a section come first',
        ),
      ),
    sheet: z.optional(sheet).check(z.describe('how the page looks')),
    practicePage: z
      .optional(webAddress())
      .check(
        z.describe(
          'where the take-home pack of the lesson lies on the web; printed on the sheet as a code to scan',
        ),
      ),
  },
  { error: map('a-lesson') },
);

/** A lesson as written, its shape checked. */
export type RawLesson = z.output<typeof lessonSchema>;

/** A section of a lesson as written, its shape checked. */
export type RawSection = NonNullable<NonNullable<RawLesson['sections']>[number]>;
