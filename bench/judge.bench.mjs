/**
 * The verdicts on takes of known truth: every row of the table of what the practice page once said wrongly, over all
 * exercises of a sheet, then the stories line by line, heard as exact strokes and by the ear from rendered sound, and
 * every pair of exercises.
 *
 * Conventions: each line says what was expected and, where it was not said, what was said instead. The kit and the hands
 * are seeded; none of the sound has trained the ear. `SHEDBOOK_STORIES=exact` leaves out what is heard from sound.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { planPractice } from '@shedbook/coach';
import { exerciseKey } from '@shedbook/core';
import { judge } from '@shedbook/judge';
import { hearStory, taskOf } from '../internal/testing/stories/hear.mjs';
import { HELD_BACK } from '../internal/testing/stories/held-back.data.mjs';
import { LAST_NOTES, LAST_SOUND } from '../internal/testing/stories/last.data.mjs';
import { sheetNamed } from '../internal/testing/stories/lessons.mjs';
import { OTHER_SHEETS } from '../internal/testing/stories/other-sheets.data.mjs';
import { hearSound } from '../internal/testing/stories/sound.mjs';
import { AUDIO_STORIES, STORIES, UNSEEN, UNSEEN_AUDIO } from '../internal/testing/stories/stories.data.mjs';
import { UNSEEN_NOTES, UNSEEN_SOUND } from '../internal/testing/stories/unseen.data.mjs';
import { faultsOf } from '../internal/testing/stories/verdict.mjs';

export const name = 'judge';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const BARS = 4;
const isWithSound = process.env.SHEDBOOK_STORIES !== 'exact';

const formOf = (bars) => ({
  name: 'loop',
  sections: [{ play: 'pattern', bars, ending: null }],
  repeat: 1,
  countInBars: 0,
});

function verdictsOn(story, hear) {
  const lesson = sheetNamed(story.sheet);
  const form = formOf(story.form ?? BARS);
  const { take, loops } = hear(lesson, form, story);
  const task = taskOf(lesson, form, story);
  const heard = story.takeOnly ? [take] : [take, ...loops];
  return heard.map((each) => judge(task, each, story.level).verdict);
}

const told = ({ is, about }) =>
  `${is}: ${about.map(({ what, voice, exercise }) => [what, voice, exercise].filter(Boolean).join(' ')).join('; ') || 'nothing'}`;

const expectedOf = ({ is, first, voice }) =>
  [[is].flat().join(' or '), [first ?? []].flat().join(' or '), voice].filter(Boolean).join(', ');

/** The first of some that are not none. */
function firstOf(all) {
  const [first] = all;
  if (first === undefined) throw new Error('there is none');
  return first;
}

/** One line: the share of right verdicts, what was expected, and what was said where it was another. */
function line(story, how, hear) {
  const verdicts = verdictsOn(story, hear);
  const wrong = verdicts.filter((verdict) => faultsOf(story, verdict).length > 0);
  const said = wrong.length === 0 ? '' : ` ✗ said ${told(firstOf(wrong))}`;
  return {
    what: `${story.name} (${how}): expected ${expectedOf(story)}${said}`,
    value: (100 * (verdicts.length - wrong.length)) / verdicts.length,
    unit: '%',
    right: wrong.length === 0,
  };
}

const lesson = sheetNamed();
const numbers = lesson.exercises.map(({ number }) => number);

/** Every exercise asked for, and every other one played as written, exact strokes, along with the click. */
function pairs() {
  const said = new Map();
  let all = 0;
  for (const asked of numbers) {
    for (const played of numbers) {
      if (asked === played) continue;
      const own = { name: `${asked} ${played}`, exercise: asked, level: 'beginner', click: true, rounds: 1 };
      const verdict = firstOf(verdictsOn({ ...own, play: { exercise: played } }, hearStory));
      const isNamed = verdict.about.some((one) => one.what === 'other-exercise' && one.exercise === played);
      const what = isNamed ? 'named' : verdict.is === 'clean' ? 'clean' : verdict.about[0]?.what;
      said.set(what, (said.get(what) ?? 0) + 1);
      all += 1;
    }
  }
  const others = [...said].filter(([what]) => what !== 'named').map(([what, count]) => `${what} ${count}`);
  return [
    {
      what: `another exercise as written, exact notes: expected its number; else said ${others.join(', ') || 'nothing else'}`,
      value: said.get('named') ?? 0,
      unit: `of ${all}`,
    },
  ];
}

const isAbout =
  (what, voice) =>
  ({ about }) =>
    about[0]?.what === what && (voice === undefined || about[0]?.voice === voice);
const isClean = ({ is }) => is === 'clean';
const CLICK = { click: true, rounds: 1 };

/**
 * What is played, what must be said, the story, and whether a verdict is right.
 * @typedef {import('../internal/testing/stories/story.d.ts').Story} Story
 * @typedef {readonly [string, string, Partial<Story>, (verdict: import('@shedbook/judge').Verdict) => boolean]} Row
 */

/**
 * The rows of the table, each over every exercise of the sheet: what is played, at which level, what must be said.
 * @type {readonly Row[]}
 */
const TABLE = [
  [
    'snare left out throughout',
    'missing snare',
    { play: { leaves: ['snare'], spreadMs: 10 } },
    isAbout('missing', 'snare'),
  ],
  [
    'snare missing in two of four bars',
    'missing snare',
    { play: { leavesAt: [{ voice: 'snare', bars: [2, 3] }], spreadMs: 10 } },
    isAbout('missing', 'snare'),
  ],
  ['30 ms early throughout', 'clean', { level: 'advanced', play: { lateMs: -30, spreadMs: 8 } }, isClean],
  [
    'latency unchecked, 140 ms late',
    'clean',
    { level: 'advanced', play: { lateMs: 140, spreadMs: 8 } },
    isClean,
  ],
  ['a good player, spread 10 ms, fluent', 'clean', { level: 'advanced', play: { spreadMs: 10 } }, isClean],
  ['listening first', 'not judged', { play: { silent: true } }, ({ is }) => is === 'not judged'],
  [
    'only talking',
    'not judged',
    { microphone: true, play: { only: [], sounds: 9 } },
    ({ is }) => is === 'not judged',
  ],
  [
    'straight eighths in a swing lesson',
    'straight-feel',
    { play: { straight: true, spreadMs: 8 } },
    isAbout('straight-feel'),
  ],
  [
    'nine clean rounds up the ladder, without the click',
    'clean',
    { click: false, rounds: 9, ladder: 2, level: 'intermediate', play: { spreadMs: 8 } },
    isClean,
  ],
  [
    'no snare, exact notes, by himself',
    'missing snare',
    { click: false, rounds: 2, play: { leaves: ['snare'], spreadMs: 8 } },
    isAbout('missing', 'snare'),
  ],
  [
    'the right rhythm on a tom',
    'wrong-voice snare',
    { play: { on: { snare: 'tom-mid' }, spreadMs: 8 } },
    isAbout('wrong-voice', 'snare'),
  ],
  ['one limb alone, as said', 'clean', { plays: ['bass'], play: { only: ['bass'], spreadMs: 10 } }, isClean],
  [
    'an uneven ride',
    'uneven: the ride alone',
    {
      level: 'intermediate',
      rounds: 2,
      play: { spreadMs: { ride: 45, snare: 8, bass: 8, 'hihat-foot': 8 } },
    },
    ({ about }) =>
      about[0]?.voice === 'ride' && about.every(({ what, voice }) => what !== 'uneven' || voice === 'ride'),
  ],
];

/** @type {readonly import('@shedbook/core').Voice[]} */
const SWING = ['ride', 'hihat-foot', 'bass', 'snare'];
/**
 * A loudspeaker in the room, of which the ear knows nothing but the voices: the harder case. The practice page gives it
 * what it plays, too.
 * @type {Partial<Story>}
 */
const BESIDE = { level: 'beginner', microphone: true, loudspeaker: true, sounding: SWING };
const isNotClean = ({ is }) => is !== 'clean';

/**
 * The rows that are heard from sound beside a loudspeaker, over some exercises.
 * @type {readonly Row[]}
 */
const SOUND_TABLE = [
  [
    'loudspeaker on at −10 dB, snare never played',
    'not clean',
    { ...BESIDE, play: { leaves: ['snare'], spreadMs: 12 } },
    isNotClean,
  ],
  [
    'loudspeaker on at −10 dB, ride never played',
    'not clean',
    { ...BESIDE, play: { leaves: ['ride'], spreadMs: 12 } },
    isNotClean,
  ],
  [
    'the page’s own advice: the snare alone, the rest by loudspeaker',
    'clean',
    {
      ...BESIDE,
      plays: ['snare'],
      sounding: ['ride', 'hihat-foot', 'bass'],
      play: { only: ['snare'], spreadMs: 12 },
    },
    isClean,
  ],
];
const SOME = [7, 13, 16, 22, 24];

/**
 * A row of the table over some exercises.
 * @param {readonly number[]} some
 * @param {Row} row
 * @param {typeof hearStory} hear
 */
function over(some, [what, expected, story, isRight], hear) {
  const verdicts = some.map((exercise) => {
    const own = { level: 'beginner', ...CLICK, ...story, name: `${what} ${exercise}`, exercise };
    return firstOf(verdictsOn(own, hear));
  });
  const wrong = verdicts.filter((verdict) => !isRight(verdict));
  const said = wrong.length === 0 ? '' : ` ✗ said ${told(firstOf(wrong))}`;
  return {
    what: `${what}: expected ${expected}${said}`,
    value: verdicts.length - wrong.length,
    unit: `of ${verdicts.length}`,
  };
}

/**
 * A row beside a loudspeaker, without and with the ear's knowing what it plays.
 * @param {Row} row
 */
function besideLoudspeaker([what, expected, story, isRight]) {
  return [false, true].map((isKnown) => {
    const how = isKnown ? ', as the page hears it' : '';
    return over(SOME, [`${what}${how}`, expected, { ...story, isKnown }, isRight], hearSound);
  });
}

const DAY_MS = 86_400_000;

/** A student who stays at 104 of 120 for eight weeks: how many exercises the lists had, and how many of them were new. */
function plateau() {
  const shelf = [{ id: 'sheet', lesson }];
  const entries = [];
  const met = new Set();
  const days = { quiet: 0 };
  for (let day = 0; day < 56; day += 1) {
    const now = new Date(Date.UTC(2026, 0, 5, 17) + day * DAY_MS).toISOString();
    const log = { version: 1, entries, removed: [] };
    const { items } = planPractice({ shelf, log, now, minutes: 20, assignments: [], seed: 1 });
    const before = met.size;
    for (const { exercise, tempo, kind } of items) {
      if (exercise === null || tempo === null) continue;
      met.add(exercise);
      const loops = Array.from({ length: 10 }, (_, i) => {
        const bpm = Math.min(104, tempo.fromBpm + 2 * i);
        return { bpm, verdict: bpm < 104 ? 'clean' : 'loose', faults: [] };
      });
      const entry = { device: 'bench', startedAt: now, durationSeconds: 120, lesson: 'sheet', exercise };
      entries.push({
        ...entry,
        id: `${day} ${entries.length}`,
        form: kind === 'apart' ? 'cell alone' : 'loop',
        heardBy: 'ear',
        loops,
      });
    }
    if (met.size === before && met.size < numbers.length) days.quiet += 1;
  }
  const keys = new Set(lesson.exercises.map(exerciseKey));
  return {
    what: `a student who stays at 104 of 120, 56 days: expected every exercise; days without a new one before that: ${days.quiet}`,
    value: [...met].filter((key) => keys.has(key)).length,
    unit: `of ${keys.size}`,
  };
}

/** "That was clean" again and again while nothing sounds: the rounds of the practice page, by their own test. */
function nothingSounds() {
  const run = ['vitest', 'run', 'apps/practice/src/session/rounds.test.ts'];
  const { status } = spawnSync('npx', run, { cwd: ROOT, stdio: 'ignore' });
  return {
    what: '“That was clean” 21 times in 2 s, nothing sounding: expected no round counted',
    value: status === 0 ? 1 : 0,
    unit: 'of 1',
  };
}

/** Every row of the table. */
export function tableRows() {
  return [
    ...TABLE.map((row) => over(numbers, row, hearStory)),
    ...pairs(),
    ...(isWithSound ? SOUND_TABLE.flatMap(besideLoudspeaker) : []),
    plateau(),
    nothingSounds(),
  ];
}

function summary(what, lines) {
  return { what, value: lines.filter(({ right }) => right).length, unit: `of ${lines.length}` };
}

/** @typedef {readonly [string, readonly Story[], typeof hearStory]} Heard how, which stories, by which ear */

/** @type {readonly Heard[]} */
const EXACT = [
  ['exact strokes', [...STORIES, ...UNSEEN], hearStory],
  ['other sheets', OTHER_SHEETS, hearStory],
  ['held back', [...HELD_BACK, ...UNSEEN_NOTES], hearStory],
  ['held back to the last', LAST_NOTES, hearStory],
];

/** @type {readonly Heard[]} */
const FROM_SOUND = [
  ['sound', [...AUDIO_STORIES, ...UNSEEN_AUDIO], hearSound],
  [
    'sound, held back',
    [...HELD_BACK.filter(({ sound }) => sound).map((story) => ({ ...story, rounds: 1 })), ...UNSEEN_SOUND],
    hearSound,
  ],
  ['sound, held back to the last', LAST_SOUND, hearSound],
];

export async function run() {
  const heard = isWithSound ? [...EXACT, ...FROM_SOUND] : EXACT;
  const sets = heard.map(([how, stories, hear]) => ({
    how,
    lines: stories.map((story) => line(story, how, hear)),
  }));
  return [
    ...tableRows(),
    ...sets.flatMap(({ lines }) => lines),
    ...sets.map(({ how, lines }) => summary(`stories right, ${how}`, lines)),
  ];
}
