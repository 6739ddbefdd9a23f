import { Bpm, type Lesson, parseLesson, perform, Seconds } from '@shedbook/core';
import type { TimedStroke } from '@shedbook/stand';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import { makeHearingPack } from '../../../../internal/testing/hearing.ts';
import {
  hostFolder,
  PRACTICE_LESSON,
  pressUntilLadderSays,
  type StaticHost,
  temporaryFolder,
} from '../../../../internal/testing/practice.ts';
import { openListening, strokesOf, waitForStrokes } from '../../../../internal/testing/sound.ts';
import { formOf, TRADE } from '../session/choice.ts';

const RATE = 44_100;
const FOLDER = temporaryFolder();

const browser = await sharedBrowser();
let host: StaticHost;

beforeAll(async () => {
  // Without recordings: what is heard here is what the page itself plays.
  host = await hostFolder(await makeHearingPack(PRACTICE_LESSON, FOLDER.path, 'first-swing'));
});

afterAll(async () => {
  await host.stop();
  FOLDER.remove();
});

const { lesson: read } = parseLesson(PRACTICE_LESSON, 'lesson');
if (!read) throw new Error('the lesson has problems');
const LESSON: Lesson = read;

async function onStand(hash: string): Promise<Page> {
  const page = await openListening(browser, `${host.url}${hash}`, {
    viewport: { width: 820, height: 1180 },
    // Keeping the page for later costs as much as opening it.
    serviceWorkers: 'block',
  });
  await page.locator('[data-part="play"]').waitFor();
  return page;
}

/** Opens the settings, does something there, and closes them. */
async function setting(page: Page, ...labels: readonly string[]): Promise<void> {
  await page.getByRole('button', { name: 'More' }).click();
  for (const label of labels) await page.locator('dialog').getByText(label, { exact: true }).click();
  await page.getByRole('button', { name: 'Done' }).click();
}

/** A tempo at which a bar lasts long enough to be looked at while it sounds. */
const SLOWER_BPM = 200;
const playSlower = (page: Page) => page.locator('input[type="range"]').fill(String(SLOWER_BPM));

const play = (page: Page) => page.getByRole('button', { name: 'Play', exact: true }).click();

/** The strokes without clicks of a practice click, each with its sample from the first stroke on. */
function ofScore(played: readonly TimedStroke[]) {
  const start = played[0]?.sample ?? 0;
  return played.map(({ sample, stroke }) => [sample - start, stroke.voice, stroke.written]);
}

/** The score of an exercise in a form, gone through again and again, as samples. */
function score(
  exercise: number,
  name: string,
  count: number,
  options: { layers?: number; bpm?: number } = {},
) {
  const form = formOf(LESSON, name);
  const bpm = options.bpm ?? LESSON.tempo.startBpm;
  const layers = options.layers ?? LESSON.layers.length;
  const { strokes, durationSeconds, countInSeconds } = perform(LESSON, {
    exercise,
    form,
    bpm: Bpm(bpm),
    layers,
  });
  const round = strokes.filter((each) => each.role !== 'count-in');
  const all = [...strokes];
  for (let pass = 1; all.length < count; pass += 1) {
    const later = pass * (durationSeconds - countInSeconds);
    all.push(...round.map((each) => ({ ...each, timeSeconds: Seconds(each.timeSeconds + later) })));
  }
  // definition: a stroke at t seconds falls on sample t · rate, to the nearest
  return all
    .slice(0, count)
    .map(({ timeSeconds, voice, written }) => [Math.round(timeSeconds * RATE), voice, written]);
}

it('[ST41] plays the exercise that was chosen, sample for sample, round after round', async () => {
  const page = await openListening(browser, host.url);
  await page.getByRole('link', { name: /Practise exercise 3/ }).click();
  await play(page);
  await waitForStrokes(page, 70);
  const played = await strokesOf(page);
  expect(ofScore(played)).toEqual(score(3, 'loop', played.length));
  // definition: a round of four bars of this groove has fewer than 60 strokes
  expect(new Set(played.map((each) => each.pass)).size).toBeGreaterThan(1);
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
});

it('[ST42] ends four-and-two on its accent, and says so', async () => {
  const page = await onStand('#1');
  await setting(page, 'Four and two');
  expect(await page.locator('[data-part="form"]').textContent()).toContain(
    'Last bar: rim shot + crash on 4 let',
  );
  await play(page);
  await waitForStrokes(page, 75);
  const played = await strokesOf(page);
  expect(ofScore(played)).toEqual(score(1, 'four and two', played.length));
  const crash = played.find(({ stroke }) => stroke.voice === 'crash');
  // definition: the accent falls on the last triplet of the fourth beat of the fourth bar
  expect(crash?.stroke.written).toEqual({ bar: 4, beat: 4, slot: 3 });
});

it('[ST42] rests for the student while count and ball go on', async () => {
  const page = await onStand('#1');
  await setting(page, 'Trade 4s');
  await playSlower(page);
  await play(page);
  await waitForStrokes(page, 40);
  const turn = page.locator('[data-part="counter"][data-kind="rest"]');
  await turn.waitFor();
  await page.waitForFunction(
    () => {
      const ball = [...document.querySelectorAll<SVGElement>('[data-part="ball"]')].find(
        (each) => each.style.visibility === 'visible',
      );
      return ball?.closest('[data-on="exercise"]');
    },
    undefined,
    { polling: 100 },
  );
  expect(await turn.locator('[data-part="says"]').textContent()).toContain('You · bar 5 of 8');
  await page.locator('[data-part="counter"][data-kind="pattern"]').waitFor();
  const played = await strokesOf(page);
  expect(ofScore(played)).toEqual(score(1, TRADE, played.length, { bpm: SLOWER_BPM }));
  // definition: bars 5 to 8 are the student's
  expect(played.filter(({ stroke }) => stroke.written.bar > 4)).toEqual([]);
});

it('[ST42] lets the layers of the groove join one by one', async () => {
  const page = await onStand('#1');
  await page.getByRole('button', { name: 'Faster' }).focus();
  for (let i = 0; i < 5; i += 1) await page.keyboard.press('Enter');
  await setting(page, 'Layer by layer');
  await play(page);
  // definition: at 300 a round of four bars lasts 3.2 s; each layer plays for two rounds
  await page.waitForFunction(
    () => window.heardByTest.strokes.some((each) => (each as { pass: number }).pass === 4),
    undefined,
    { polling: 100 },
  );
  const played = await strokesOf(page);
  const voicesOf = (pass: number) =>
    [...new Set(played.filter((each) => each.pass === pass).map(({ stroke }) => stroke.voice))]
      .filter((voice) => voice !== 'click')
      .toSorted();
  expect([0, 1, 2, 3].map(voicesOf)).toEqual([
    ['ride'],
    ['ride'],
    ['hihat-foot', 'ride'],
    ['hihat-foot', 'ride'],
  ]);
});

/** Waits until a round of the form has begun, counted from 0. */
const waitForRound = (page: Page, pass: number) =>
  page.waitForFunction(
    (wanted) => ((window.heardByTest.strokes.at(-1) as { pass: number } | undefined)?.pass ?? -1) >= wanted,
    pass,
    { polling: 100 },
  );

const ladderSays = (page: Page) => page.locator('[data-part="ladder-last"]').textContent();

it('[ST43] counts a round that went by once, climbs after three that the student calls clean, comes down after two stumbles', async () => {
  const page = await onStand('#1');
  const clean = page.getByRole('button', { name: 'That was clean' });
  const press = async (times: number) => {
    for (let i = 0; i < times; i += 1) await page.keyboard.press('c');
  };
  // the story: 21 presses while nothing sounds
  await press(21);
  expect(await ladderSays(page)).toBe('Play a round to its end, then say how it was.');
  const says = () => page.locator('[data-part="ladder-says"]').textContent();
  expect(await says()).toContain('0 of 3 clean loops at 280');
  await play(page);
  const pressClean = (text: string) => pressUntilLadderSays(page, () => press(1), text);
  await waitForRound(page, 1);
  await clean.click();
  await pressClean('1 of 3 clean loops at 280');
  await press(3);
  expect(await says()).toContain('1 of 3 clean loops at 280');
  await waitForRound(page, 2);
  await pressClean('2 of 3 clean loops at 280');
  await waitForRound(page, 3);
  // definition: start 280, step 8
  await pressClean('0 of 3 clean loops at 288');
  const climbed = (await strokesOf(page)).at(-1)?.pass ?? 0;
  await waitForRound(page, climbed + 2);
  const played = await strokesOf(page);
  const beats = (pass: number) =>
    played.filter((each) => each.pass === pass && each.stroke.voice === 'bass').map((each) => each.sample);
  const steps = (pass: number) =>
    beats(pass)
      .slice(1)
      .map((sample, i) => sample - (beats(pass)[i] ?? 0));
  // definition: beats at 280 lie 9450 samples apart in the rounds that were played, at 288 9187.5 in the next
  expect(new Set(steps(0))).toEqual(new Set([9450]));
  expect(steps(climbed + 1).length).toBeGreaterThan(2);
  for (const step of steps(climbed + 1)) expect(Math.abs(step - 9187.5)).toBeLessThan(1);
  // definition: two rounds that were not clean come down one step
  await pressUntilLadderSays(page, () => page.keyboard.press('s'), '0 of 3 clean loops at 280');
  await page.getByRole('button', { name: 'Slower' }).click();
  // definition: a tempo that was chosen, 276, is where the ladder stands
  await expect.poll(says).toContain('0 of 3 clean loops at 276');
});

it('[ST115] says when the device took the sound away, and goes on from the bar where it stopped', async () => {
  const page = await onStand('#1');
  await playSlower(page);
  await play(page);
  const bar = page.locator('[data-part="counter"][data-kind="pattern"] [data-part="bar"]');
  await expect.poll(() => bar.textContent(), { timeout: 30_000 }).toBe('3');
  await page.evaluate(() => window.heardByTest.context?.suspend());
  await page.getByText('The sound was taken away').waitFor();
  await play(page);
  const isCountIn = ({ stroke }: TimedStroke) => stroke.role === 'count-in';
  const goneOn = async () => {
    const all = await strokesOf(page);
    const again = all.findLastIndex(isCountIn);
    return all.filter(isCountIn).length >= 8 ? all.slice(again + 1) : [];
  };
  await expect.poll(async () => (await goneOn()).length, { timeout: 30_000 }).toBeGreaterThan(4);
  const after = await goneOn();
  // definition: it stopped in the third bar, or in the fourth where the page was slow to be told
  expect(after[0]?.stroke.written.bar).toBeGreaterThanOrEqual(3);
  expect(after[0]?.stroke.written.beat).toBe(1);
  expect(after[0]?.pass).toBe(0);
}, 60_000);

it('[ST44] [ST4300] clicks on 2 and 4, drops out for gap bars, ticks inside the beat, and counts aloud over it', async () => {
  const page = await onStand('#1');
  const coming = page.waitForResponse(/english.*\.flac/);
  await setting(page, 'On 2 and 4', '1 on, 1 off', 'Eighths', 'Count aloud over the click');
  expect((await coming).ok()).toBe(true);
  await play(page);
  await waitForStrokes(page, 90);
  const clicks = (await strokesOf(page)).filter(
    ({ stroke }) => stroke.voice === 'click' && stroke.role !== 'count-in',
  );
  const said = clicks
    .filter(({ pass, stroke }) => pass === 0 && stroke.written.bar <= 3)
    .map(({ stroke: { mark, written } }) => `${written.bar} ${written.beat}.${written.slot} ${mark}`);
  // definition: bars 1 and 3 of one on, one off; clicks on 2 and 4, quiet ticks on the other eighths
  const bar = ['1.1 g', '1.2 g', '2.1 x', '2.2 g', '3.1 g', '3.2 g', '4.1 x', '4.2 g'];
  expect(said).toEqual([...bar.map((each) => `1 ${each}`), ...bar.map((each) => `3 ${each}`)]);
});

it('[ST45] falls silent for the limbs that the student plays, named for the set-up', async () => {
  const page = await onStand('#1');
  await setting(page, 'right hand: ride', 'left foot: hi-hat foot');
  await play(page);
  await waitForStrokes(page, 30);
  const voices = new Set((await strokesOf(page)).map(({ stroke }) => stroke.voice));
  expect(voices).toEqual(new Set(['click', 'bass', 'snare']));
});

it('[ST45] [ST5901] mirrors limbs and written hands for a left-handed student', async () => {
  const page = await onStand('#2');
  const hands = () => page.locator('[data-part="hand"]').allTextContents();
  await page.locator('[data-part="hand"]').first().waitFor();
  // definition: the lesson writes L L L L for a right-handed set-up
  expect(await hands()).toEqual(['L', 'L', 'L', 'L']);
  await page.getByRole('link', { name: 'The sheet' }).click();
  await page.getByText('Left-handed').click();
  await page.getByRole('link', { name: /Practise exercise 2/ }).click();
  await page.locator('[data-part="hand"]').first().waitFor();
  expect(await hands()).toEqual(['R', 'R', 'R', 'R']);
  await page.getByRole('button', { name: 'More' }).click();
  expect(await page.locator('dialog').getByText('left hand: ride').count()).toBe(1);
});

it('[ST46] takes the tempo from taps, keys and the line, and keeps it for the exercise', async () => {
  const page = await onStand('#1');
  const says = () => page.locator('[data-part="tempo"] strong').textContent();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowDown');
  expect(await says()).toBe('281');
  await page.locator('input[type="range"]').fill('90');
  expect(await says()).toBe('90');
  await page.evaluate(() => {
    let now = 1000;
    performance.now = () => now;
    for (let i = 0; i < 4; i += 1) {
      window.dispatchEvent(new KeyboardEvent('keydown', { key: 't' }));
      now += 500;
    }
  });
  // definition: taps half a second apart are 120 a minute
  await expect.poll(says).toBe('120');
  await page.locator('input[type="range"]').blur();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowRight');
  await page.waitForURL(/#2$/);
  // definition: the next exercise stands at the lesson's own tempo
  await expect.poll(says).toBe('280');
  await page.locator('input[type="range"]').fill('77');
  await page.reload();
  await page.locator('[data-part="play"]').waitFor();
  expect(await says()).toBe('77');
  await page.keyboard.press('ArrowLeft');
  await expect.poll(says).toBe('119');
});
