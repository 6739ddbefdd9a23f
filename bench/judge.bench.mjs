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

/** The snare left out of every exercise. */
function withoutSnare() {
  const verdicts = lesson.exercises.map(({ number }) => {
    const story = {
      name: `without ${number}`,
      exercise: number,
      level: 'beginner',
      click: true,
      rounds: 1,
      play: { leaves: ['snare'], spreadMs: 10 },
    };
    return verdictsOn(story, hearStory)[0];
  });
  const right = verdicts.filter(
    ({ about }) => about[0]?.what === 'missing' && about[0]?.voice === 'snare',
  ).length;
  return {
    what: `no snare, ${verdicts.length} exercises: told as missing`,
    value: right,
    unit: `of ${verdicts.length}`,
  };
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
    withoutSnare(),
    ...pairs(),
    summary('stories right, exact strokes', exact),
    summary('stories right, unseen', unseen),
    summary('stories right, held back', held),
    summary('stories right, from sound', sound),
    summary('stories right, held back, from sound', heldSound),
  ];
}
