import { Bpm, type FullReport, Milliseconds } from '@shedbook/core';
import { type About, adviceOn, figureOf, type Judgement, judge, WHATS } from '@shedbook/judge';
import { expect, it } from 'vitest';
import {
  formOf,
  lessonOf,
  loopReport,
  type PlayedAs,
  swingAsked,
  swingTask,
} from '../../../../internal/testing/loops.ts';
import { ENGLISH } from '../english/english.ts';
import { setting as englishMenu } from '../english/practice/setting.ts';
import { GERMAN } from '../german/german.ts';
import { setting as germanMenu } from '../german/practice/setting.ts';
import { sayVerdict, teacherSentences } from '../report/say.ts';

const task = swingTask();
const judged = (
  report: FullReport,
  level: 'beginner' | 'intermediate' | 'advanced' = 'intermediate',
): Judgement => judge(swingAsked(), { report }, level);
const snareOn = (beat: number, playAs: PlayedAs | null) =>
  loopReport(task, ({ voice, written }) => (voice === 'snare' && written.beat === beat ? playAs : {}));

it('[WO20] says one thing to do, in words of sound and movement, and the figures behind it', () => {
  // common practice: triplets are counted "1 trip let", the snare is the left hand of a right-handed set-up
  expect(sayVerdict(judged(snareOn(1, { offsetMs: -60 })), ENGLISH)).toEqual({
    advice: 'Let the snare fall later on the let of 1: the last triplet lies close to the next beat.',
    figures: [expect.stringMatching(/^Left hand \(snare\): about (59|60|61) ms early on the let of 1\.$/)],
  });
  expect(sayVerdict(judged(snareOn(3, null)), ENGLISH)).toEqual({
    advice: 'Let the snare sound on the let of 3: it is missing there.',
    figures: ['Left hand (snare): 4 of 8 strokes missing, on the let of 3.'],
  });
  expect(sayVerdict(judged(snareOn(3, null)), GERMAN)).toEqual({
    advice: 'Die Snare fehlt auf dem „ole“ der 3: Lass es dort klingen.',
    figures: ['Linke Hand (Snare): 4 von 8 Schlägen fehlen, auf dem „ole“ der 3.'],
  });
});

it('[WO20] praises where there is nothing to do', () => {
  expect(teacherSentences(judged(loopReport(task)), ENGLISH)).toEqual([
    'All 56 strokes are there, and no others.',
    'The tempo holds at 72.',
    expect.stringMatching(/ is steady: half of its strokes lie within 1 ms of their place\.$/),
  ]);
  const early = sayVerdict(judged(loopReport(task, () => ({ offsetMs: -30 }))), ENGLISH);
  expect(early.advice).toBeNull();
  expect(early.figures.at(-1)).toBe(
    'Everything came about 30 ms early, evenly: that may be the devices, and is no fault.',
  );
});

it('[WO20] a left-handed set-up mirrors the limbs, and a written hand decides', () => {
  const lesson = lessonOf(
    'title: Mirror\nsetUp: left-handed\ngroove: {bass: x . x .}\nexercises:\n  - {pattern: x x x x, sticking: RLRL}\n',
  );
  const asked = { lesson, exercise: 1, form: formOf(lesson), bpm: Bpm(80) };
  const { task: mirrored } = judge(asked, { report: null }, 'beginner');
  const report = loopReport(mirrored, ({ voice, written }) =>
    voice === 'snare' && written.beat === 2 ? { offsetMs: 110 } : {},
  );
  expect(sayVerdict(judge(asked, { report }, 'advanced'), ENGLISH).figures[0]).toMatch(
    /^Left hand \(snare\): about 1[01]\d ms late on 2\.$/,
  );
});

const FIGURES = { ms: 33, percent: 7, db: 9, bpm: Bpm(91), times: 3, of: 8, exercise: 4, beats: -2 };
const PLACES = [1, 2].map((bar) => ({ bar, beat: 2, slot: 3 }));

/** A verdict that is about one thing. */
const saying = (one: About): Judgement => ({
  verdict: { level: 'beginner', is: 'nearly', about: [one] },
  rounds: [],
  praise: [],
  wholeMs: null,
  task,
  told: null,
});

/** What a verdict may say of something: of the whole, or of a voice throughout and at places. */
function aboutOf(what: About['what']): readonly About[] {
  const figures = { ...FIGURES, what } as unknown as About;
  if (OF_NO_VOICE.has(what)) return [figures];
  const voice = { voice: 'snare', instead: 'tom-low' } as const;
  return [
    // bars that were not gone through are nobody's
    ...(what === 'missing' ? [{ ...figures, places: PLACES }] : []),
    { ...figures, ...voice },
    { ...figures, ...voice, places: PLACES },
    { ...figures, ...voice, places: PLACES.slice(0, 1) },
  ];
}

it('[WO5302] names whole bars and rounds, and no places of them', () => {
  const late = { what: 'late', voice: 'snare', ms: Milliseconds(101), places: PLACES } as const;
  const missing = { what: 'missing', voice: 'snare', times: 10, of: 40, places: PLACES } as const;
  const said = (one: About, language: typeof ENGLISH) => sayVerdict(saying(one), language);
  expect(said({ ...late, bars: [3, 4] }, ENGLISH)).toEqual({
    advice: 'Start the snare sooner: let it sound as one with the ride.',
    figures: ['Left hand (snare): about 101 ms late in bar 3 and bar 4.'],
  });
  const figure = (one: About, language: typeof ENGLISH) => said(one, language).figures[0];
  expect(figure({ ...missing, rounds: [3, 6] }, ENGLISH)).toBe(
    'Left hand (snare): 10 of 40 strokes missing, in round 3 and round 6.',
  );
  expect(figure({ ...late, what: 'early', bars: [2], rounds: [3] }, ENGLISH)).toBe(
    'Left hand (snare): about 101 ms early in bar 2 of round 3.',
  );
  expect(figure({ ...late, bars: [3, 4] }, GERMAN)).toBe(
    'Linke Hand (Snare): etwa 101 ms zu spät in Takt 3 und Takt 4.',
  );
  expect(figure({ ...missing, rounds: [3] }, GERMAN)).toBe(
    'Linke Hand (Snare): 10 von 40 Schlägen fehlen, in Runde 3.',
  );
});

it('[WO6600] what to do about a loudspeaker is right wherever it is read, and names the menu of the page that has it', () => {
  const asked = (language: typeof ENGLISH) =>
    [saying({ what: 'only-loudspeaker' }), saying({ what: 'only-loudspeaker', voice: 'snare' })].map(
      (one) => sayVerdict(one, language).advice ?? '',
    );
  // definition: the words of the page's own menu, said of the page alone
  for (const advice of asked(ENGLISH))
    expect(advice).toContain(`(on the practice page: “${englishMenu.open}”, “${englishMenu.mine}”)`);
  for (const advice of asked(GERMAN))
    expect(advice).toContain(`(auf der Übeseite: „${germanMenu.open}“, „${germanMenu.mine}“)`);
  expect(asked(ENGLISH)[1]).toMatch(
    /^The snare cannot be told from the loudspeaker\. Wear headphones, or let it /,
  );
});

const OF_NO_VOICE: ReadonlySet<string> = new Set([
  ...[
    'other-exercise',
    'straight-feel',
    'swung-feel',
    'shifted',
    'offset',
    'rushing',
    'dragging',
    'slow',
    'fast',
  ],
  ...['nobody-played', 'only-loudspeaker', 'too-little-heard'],
]);

it('[WO20] has something to say of everything that a verdict is about', () => {
  for (const what of WHATS) {
    const about = aboutOf(what);
    const facts = about.flatMap((one) => [adviceOn(one, task), figureOf(one, task)]);
    expect(facts.filter((fact) => fact !== null).length, what).toBeGreaterThanOrEqual(about.length);
  }
});

it('[ST92] says everything in German as in English', () => {
  for (const language of [ENGLISH, GERMAN]) {
    const said = WHATS.flatMap((what) =>
      aboutOf(what).flatMap((one) => teacherSentences(saying(one), language)),
    );
    expect(said.length).toBeGreaterThan(WHATS.length);
    for (const sentence of said) {
      expect(sentence).toMatch(/^[A-ZÄÖÜ][^\n]{10,220}\.$/);
      expect(sentence).not.toMatch(/undefined|NaN|\[object|\{\$/);
    }
  }
});
