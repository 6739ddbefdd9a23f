/**
 * The verdicts on takes of known truth: the table of stories, line by line, heard as exact strokes and by the ear from
 * rendered sound, and every pair of exercises of a sheet.
 *
 * Conventions: the share of takes whose verdict is the one that a good teacher would give; every line prints what it
 * said of the wrong ones. The kit and the hands are seeded; none of the sound has trained the ear.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseLesson } from '@shedbook/core';
import { judge } from '@shedbook/judge';
import { hearStory, taskOf } from '../internal/testing/stories/hear.mjs';
import { hearSound } from '../internal/testing/stories/sound.mjs';
import {
  AUDIO_STORIES,
  HELD_BACK,
  HELD_BACK_AUDIO,
  STORIES,
  UNSEEN,
} from '../internal/testing/stories/stories.data.mjs';
import { faultsOf } from '../internal/testing/stories/verdict.mjs';

export const name = 'judge';

const LESSON = fileURLToPath(new URL('../demo/first-swing.lesson.yaml', import.meta.url));
const BARS = 4;

const { lesson } = parseLesson(readFileSync(LESSON, 'utf8'), LESSON);

const formOf = (bars) => ({
  name: 'loop',
  sections: [{ play: 'pattern', bars, ending: null }],
  repeat: 1,
  countInBars: 0,
});

function verdictsOn(story, hear) {
  const form = formOf(story.form ?? BARS);
  const { take, loops } = hear(lesson, form, story);
  const task = taskOf(lesson, form, story);
  const heard = story.takeOnly ? [take] : [take, ...loops];
  return heard.map((each) => judge(task, each, story.level).verdict);
}

/** One line: the share of right verdicts, and beside it what was said of the first wrong one. */
function line(story, how, hear) {
  const verdicts = verdictsOn(story, hear);
  const wrong = verdicts.flatMap((verdict) => {
    const faults = faultsOf(story, verdict);
    return faults.length === 0 ? [] : [`${faults[0]}: ${told(verdict)}`];
  });
  const right = verdicts.length - wrong.length;
  return {
    what: `${story.name} (${how})${wrong.length > 0 ? ` ✗ ${wrong[0]}` : ''}`.slice(0, 160),
    value: (100 * right) / verdicts.length,
    unit: '%',
    right: wrong.length === 0,
  };
}

const told = ({ is, about }) =>
  `${is}, ${about.map(({ what, voice }) => (voice ? `${what} ${voice}` : what)).join('; ') || 'nothing'}`;

/** Every exercise asked for, and every other one played as written, exact strokes, along with the click. */
function pairs() {
  const numbers = lesson.exercises.map(({ number }) => number);
  let right = 0;
  let shifted = 0;
  let clean = 0;
  let all = 0;
  for (const asked of numbers) {
    for (const played of numbers) {
      if (asked === played) continue;
      const story = {
        name: `${asked} ${played}`,
        exercise: asked,
        level: 'beginner',
        click: true,
        rounds: 1,
        play: { exercise: played },
      };
      const [verdict] = verdictsOn(story, hearStory);
      all += 1;
      if (verdict.is === 'clean') clean += 1;
      if (verdict.about.some(({ what, exercise }) => what === 'other-exercise' && exercise === played))
        right += 1;
      else if (verdict.about[0]?.what === 'shifted') shifted += 1;
    }
  }
  return [
    { what: `another exercise as written, of ${all} pairs: named`, value: (100 * right) / all, unit: '%' },
    { what: 'the same told as a beat late or early alone', value: (100 * shifted) / all, unit: '%' },
    { what: 'the same called clean', value: (100 * clean) / all, unit: '%' },
  ];
}

const isAbout =
  (what, voice) =>
  ({ about }) =>
    about[0]?.what === what && (voice === undefined || about[0]?.voice === voice);

/**
 * The table of what the practice page once said wrongly, each line over every exercise of the sheet: what is played, at
 * which level, and what must be said.
 */
const TABLE = [
  ['no snare: told as missing', 'beginner', { leaves: ['snare'], spreadMs: 10 }, isAbout('missing', 'snare')],
  [
    'no snare in two of four bars: told as missing',
    'beginner',
    { leavesAt: [{ voice: 'snare', bars: [2, 3] }], spreadMs: 10 },
    isAbout('missing', 'snare'),
  ],
  ['30 ms early throughout: clean', 'advanced', { lateMs: -30, spreadMs: 8 }, ({ is }) => is === 'clean'],
  ['a spread of 10 ms: clean', 'advanced', { spreadMs: 10 }, ({ is }) => is === 'clean'],
  ['listening first: not judged', 'beginner', { silent: true }, ({ is }) => is === 'not judged'],
  ['straight eighths: told as that', 'beginner', { straight: true, spreadMs: 8 }, isAbout('straight-feel')],
];

/** The same beside a loudspeaker that plays everything, by the ear from sound, over some exercises. */
const BESIDE = [
  ['no snare', { play: { leaves: ['snare'], spreadMs: 12 } }, ({ is }) => is !== 'clean'],
  ['no ride', { play: { leaves: ['ride'], spreadMs: 12 } }, ({ is }) => is !== 'clean'],
  [
    'the snare alone, the rest by the page: clean',
    { plays: ['snare'], sounding: ['ride', 'hihat-foot', 'bass'], play: { only: ['snare'], spreadMs: 12 } },
    ({ is }) => is === 'clean',
  ],
];
const SOME = [7, 13, 16, 22, 24];
const SWING = ['ride', 'hihat-foot', 'bass', 'snare'];

function over(numbers, what, story, hear, isRight) {
  const right = numbers.filter((exercise) => {
    const [verdict] = verdictsOn(
      { click: true, rounds: 1, ...story, name: `${what} ${exercise}`, exercise },
      hear,
    );
    return isRight(verdict);
  });
  return { what, value: right.length, unit: `of ${numbers.length}` };
}

/** Every line of the table. */
export function tableRows() {
  const all = lesson.exercises.map(({ number }) => number);
  return [
    ...TABLE.map(([what, level, play, isRight]) => over(all, what, { level, play }, hearStory, isRight)),
    ...BESIDE.map(([what, story, isRight]) => {
      const beside = { level: 'beginner', microphone: true, loudspeaker: true, sounding: SWING, ...story };
      const name = `loudspeaker on, from sound, ${what}${what.includes(':') ? '' : ': not called clean'}`;
      return over(SOME, name, beside, hearSound, isRight);
    }),
  ];
}

function summary(what, lines) {
  return { what, value: lines.filter(({ right }) => right).length, unit: `of ${lines.length}` };
}

export async function run() {
  const exact = STORIES.map((story) => line(story, 'exact strokes', hearStory));
  const unseen = UNSEEN.map((story) => line(story, 'exact strokes, unseen', hearStory));
  const sound = AUDIO_STORIES.map((story) => line(story, 'sound', hearSound));
  const held = HELD_BACK.map((story) => line(story, 'exact strokes, held back', hearStory));
  const heldSound = HELD_BACK_AUDIO.map((story) => line(story, 'sound, held back', hearSound));
  return [
    ...exact,
    ...unseen,
    ...held,
    ...sound,
    ...heldSound,
    ...tableRows(),
    ...pairs(),
    summary('stories right, exact strokes', exact),
    summary('stories right, unseen', unseen),
    summary('stories right, held back', held),
    summary('stories right, from sound', sound),
    summary('stories right, held back, from sound', heldSound),
  ];
}
