import { EMPTY_LOG, passEntry } from '@shedbook/coach';
import { type Exercise, exerciseKey, formatPattern, type Lesson, PRACTICE_LOG_VERSION } from '@shedbook/core';
import { momentFrom } from '@shedbook/stand';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  keptLesson,
  keptText,
  openView,
  settled,
  sharedBrowser,
  sharedDesk,
} from '../../../../internal/testing/browser.ts';
import { rowsOf } from '../students/kept-log.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

const exercises = (lesson: Lesson) =>
  lesson.exercises.map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }));

const groove = (lesson: Lesson) =>
  Object.fromEntries(lesson.groove.map(({ voice, pattern }) => [voice, formatPattern(pattern)]));

it('[ST9] writes the groove voice by voice and says its balance in decibels and in words', async () => {
  const page = await show('First swing', 'groove');
  const bass = page.getByRole('group', { name: /^bass drum:/ });
  await bass.locator('[data-slot="0 1 0"]').click();
  await settled(page);
  expect(groove(await keptLesson(page))['bass']).toBe('x . x x');
  const level = page.getByRole('slider', { name: 'Balance of the bass drum' });
  await level.focus();
  for (let i = 0; i < 4; i += 1) await page.keyboard.press('ArrowRight');
  await settled(page);
  const { balance } = await keptLesson(page);
  // from memory: the words of a bandstand for levels, as the glossary has them
  await page.getByText(`${balance.bass} dB, soft: heard, not noticed`).waitFor();
  await page.getByRole('button', { name: 'Take out the hi-hat foot' }).click();
  await page.getByRole('button', { name: 'Add a voice' }).click();
  await page.getByRole('menuitem', { name: 'side stick' }).click();
  await page
    .getByRole('group', { name: /^side stick:/ })
    .locator('[data-slot="0 3 0"]')
    .click();
  await settled(page);
  const { sidestick, 'hihat-foot': foot } = groove(await keptLesson(page));
  expect(foot).toBeUndefined();
  expect(sidestick).toMatch(/^\.+ \.+ \.+ x\.*$/);
  // the notice of what was taken out has one too
  const undo = page.getByRole('banner').getByRole('button', { name: 'Undo', exact: true });
  while (await undo.isEnabled()) await undo.click();
  await settled(page);
  expect(groove(await keptLesson(page))).toEqual({
    ride: 'x x.x x x.x',
    'hihat-foot': '. x . x',
    bass: 'x x x x',
  });
});

it('[ST10] shows problems at their lines of the text, holds the page, and goes on when they are mended', async () => {
  const page = await show('First swing', 'text');
  const area = page.getByRole('textbox', { name: 'Text of the lesson' });
  const good = await area.inputValue();
  const wrong = good.replace('meter: 4/4', 'meter: 4/5').replace('- ... x.. ... ...', '- ... y.. ... ...');
  await area.fill(wrong);
  const lines = wrong.split('\n');
  const meterLine = lines.indexOf('meter: 4/5') + 1;
  const patternLine = lines.findIndex((line) => line.includes('y..')) + 1;
  const meter = page.getByRole('button', { name: `Line ${meterLine}, column 8` });
  await meter.waitFor();
  const pattern = page.getByRole('button', { name: new RegExp(`Line ${patternLine}, column`) });
  expect(await pattern.textContent()).toContain('Found "y"');
  expect(
    await page
      .locator('[data-part="line"][data-severity="error"] [data-part="line-number"]')
      .allTextContents(),
  ).toEqual([String(meterLine), String(patternLine)]);
  await meter.click();
  const caret = await area.evaluate((field: HTMLTextAreaElement) => field.selectionStart);
  expect(wrong.slice(caret, caret + 3)).toBe('4/5');
  await settled(page);
  await page.getByRole('link', { name: 'Page', exact: true }).click();
  await page.getByText('The text has problems').waitFor();
  expect(await page.locator('[inert] [data-part="line-editor"]').count()).toBe(1);
  await page.reload();
  await page.getByRole('button', { name: 'Mend the text' }).click();
  expect(await area.inputValue()).toBe(wrong);
  await area.fill(good);
  await page.getByText('No problems: this is a lesson.').waitFor();
  await settled(page);
  await page.getByRole('link', { name: 'Page', exact: true }).click();
  await page.locator('[data-part="line-editor"]').waitFor();
  expect(await page.locator('[inert] [data-part="line-editor"]').count()).toBe(0);
  expect(await keptText(page)).toBe(good);
});

const proposal = (page: Page) => page.locator('[data-part="proposal"]');

/** Waits until the proposal has so many exercises. */
async function proposedCount(page: Page, count: number): Promise<void> {
  await expect.poll(() => proposal(page).locator('li').count()).toBe(count);
}

it('[ST24] leaves twelve bars by hand alone when a cell is pressed, and proposes beside them', async () => {
  const page = await show('First swing', 'text');
  const bars = Array.from(
    { length: 12 },
    (_, i) => `  - x.. ... ..x ${i % 2 ? 'x..' : '..x'} | ... ... ... ${i > 5 ? 'x.x' : 'x..'}`,
  );
  const area = page.getByRole('textbox', { name: 'Text of the lesson' });
  await area.fill(['title: By hand', 'feel: triplet', 'exercises:', ...bars, ''].join('\n'));
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBe(12);
  const before = exercises(await keptLesson(page));
  await page.getByRole('link', { name: 'Compose', exact: true }).click();
  // the story: a new swing lesson offered no triplet cell
  await page.getByRole('button', { name: /^\.\.x/ }).click();
  await expect
    .poll(async () => (await keptLesson(page)).vocabulary.map((each) => each.cell.text))
    .toEqual(['..x']);
  await proposedCount(page, 1);
  await settled(page);
  // the story: one press, and twelve bars were one
  expect(exercises(await keptLesson(page))).toEqual(before);
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBe(13);
  expect(exercises(await keptLesson(page)).slice(0, 12)).toEqual(before);
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect.poll(async () => exercises(await keptLesson(page))).toEqual(before);
});

it('[ST24] keeps what is kept in the document, and places a page round it as one step', async () => {
  const page = await show('First swing', 'compose');
  const old = exercises(await keptLesson(page));
  for (const number of [2, 5])
    await page
      .getByText('Keep', { exact: true })
      .nth(number - 1)
      .click();
  const kept = async () =>
    (await keptLesson(page)).exercises.flatMap(({ keep, number }) => (keep ? [number] : []));
  await expect.poll(kept).toEqual([2, 5]);
  // the story: 14 locks were none after leaving the tab
  await page.getByRole('link', { name: 'Page', exact: true }).click();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  await page.getByRole('link', { name: 'Compose', exact: true }).click();
  await expect.poll(() => page.getByRole('checkbox', { name: /^Keep/ }).nth(1).isChecked()).toBe(true);
  expect(await page.getByRole('checkbox', { name: /^Keep/ }).nth(0).isChecked()).toBe(false);
  await page.getByRole('button', { name: 'Propose a page' }).click();
  await proposedCount(page, 24);
  await page.getByRole('button', { name: 'Another page' }).click();
  await proposedCount(page, 24);
  await settled(page);
  expect(exercises(await keptLesson(page))).toEqual(old);
  const instead = proposal(page).getByRole('button', { name: 'Put in place of the 22 that are not kept' });
  await expect.poll(() => instead.isEnabled()).toBe(true);
  const before = await keptText(page);
  await instead.click();
  await expect.poll(async () => exercises(await keptLesson(page))).not.toEqual(old);
  const next = exercises(await keptLesson(page));
  expect(next).toHaveLength(24);
  expect([next[1], next[4]]).toEqual([old[1], old[4]]);
  expect(await proposal(page).count()).toBe(0);
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await settled(page);
  expect(await keptText(page)).toBe(before);
});

it('[ST24] proposes by count and limits, and leaves what a person does not take', async () => {
  const page = await show('First swing', 'compose');
  const old = exercises(await keptLesson(page));
  const count = page.getByRole('slider', { name: 'How many bars' });
  await count.focus();
  await page.keyboard.press('ArrowLeft');
  await proposedCount(page, 23);
  await proposal(page).getByText('Take', { exact: true }).first().click();
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  // definition: 24 that were there, 23 proposed, one of them left
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBe(46);
  expect(exercises(await keptLesson(page)).slice(0, 24)).toEqual(old);
});

it('[ST24] proposes two voices in dialogue, and makes a feathered bass drum loud enough to answer', async () => {
  const page = await show('First swing', 'compose');
  await page.getByRole('radiogroup', { name: 'Second voice' }).getByText('bass drum').click();
  await proposedCount(page, 24);
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  await expect.poll(async () => (await keptLesson(page)).exercises.length).toBe(48);
  const lesson = await keptLesson(page);
  expect(lesson.exercises.at(-1)?.parts.map(({ voice }) => voice)).toEqual(['snare', 'bass']);
  expect(lesson.exerciseBalance.bass).toBe(lesson.balance.snare);
});

it('[ST24] proposes a second pass over the chosen exercise, and puts it after its own', async () => {
  const page = await show('First swing', 'compose');
  const old = exercises(await keptLesson(page));
  const second = page.locator('[data-part="second-pass"]');
  await second.locator('summary').click();
  await second.getByText('Accents', { exact: true }).click();
  await second.getByText('every third stroke', { exact: true }).click();
  await second.getByText('all exercises', { exact: true }).click();
  await second.getByRole('button', { name: 'Propose it' }).click();
  await proposedCount(page, 24);
  expect(exercises(await keptLesson(page))).toEqual(old);
  await proposal(page).getByText('Every third stroke accented', { exact: false }).first().waitFor();
  await proposal(page).getByRole('button', { name: 'Put each after its own' }).click();
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBe(48);
  const next = exercises(await keptLesson(page));
  expect(next.filter((_, i) => i % 2 === 0)).toEqual(old);
  expect(next[1]).toBe((old[0] ?? '').replace('x', 'X'));
});

it('[ST1300] proposes easier bars for the chosen exercise, says what changes, and puts one in its stead', async () => {
  const page = await show('First swing', 'compose');
  const old = exercises(await keptLesson(page));
  const around = page.locator('[data-part="from-exercise"]');
  await page.getByRole('button', { name: /^Why bar 16 is as hard/ }).click();
  await around.locator('summary', { hasText: 'Around exercise 16' }).click();
  await around.getByRole('button', { name: 'Propose it' }).click();
  // definition: four near bars at most, each one step away
  await proposedCount(page, 4);
  expect(exercises(await keptLesson(page))).toEqual(old);
  for (const at of [1, 2, 3]) await proposal(page).getByText('Take', { exact: true }).nth(at).click();
  await proposal(page).getByRole('button', { name: 'Put in its place' }).click();
  await expect.poll(async () => exercises(await keptLesson(page))[15]).not.toBe(old[15]);
  const next = exercises(await keptLesson(page));
  expect(next.toSpliced(15, 1)).toEqual(old.toSpliced(15, 1));
  await around.getByText('bars that lead to it', { exact: true }).click();
  await around.getByText('nothing yet', { exact: true }).click();
  await around.getByRole('button', { name: 'Propose it' }).click();
  await proposal(page).getByRole('button', { name: 'Put before it' }).click();
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBeGreaterThan(24);
  // definition: the goal comes after what leads to it, and what stood before it stands there still
  const led = exercises(await keptLesson(page));
  expect(led.slice(0, 15)).toEqual(next.slice(0, 15));
  expect(led.slice(led.length - 9)).toEqual(next.slice(15));
});

/** Puts a student on the roster whose teacher passed some exercises at the goal. */
async function rosterWith(page: Page, name: string, passed: readonly Exercise[]): Promise<void> {
  const made = await page.request.post(new URL('/api/students', page.url()).href, { data: { name } });
  const { id } = (await made.json()) as { readonly id: string };
  // the address of a view: /lesson/ID/VIEW
  const lesson = new URL(page.url()).pathname.split('/')[2] ?? '';
  const { tempo } = await keptLesson(page);
  const entries = passed.map((exercise) =>
    passEntry({
      id: `pass ${exercise.number}`,
      startedAt: momentFrom(new Date()),
      ...{ lesson, exercise: exerciseKey(exercise), bpm: tempo.goalBpm },
    }),
  );
  const data = { version: PRACTICE_LOG_VERSION, rows: rowsOf({ ...EMPTY_LOG, entries }) };
  await page.request.post(new URL(`/api/students/${id}/log`, page.url()).href, { data });
}

it('[ST2301] leads to an exercise from what a student plays at the goal, as the coach knows it', async () => {
  const page = await openView(browser, 'First swing', 'compose');
  const around = page.locator('[data-part="from-exercise"]');
  await page.getByRole('button', { name: /^Why bar 24 is as hard/ }).click();
  await around.locator('summary', { hasText: 'Around exercise 24' }).click();
  await around.getByText('bars that lead to it', { exact: true }).click();
  await around.getByText('what one student plays', { exact: true }).click();
  await around.getByText('Nobody is on the roster yet.').waitFor();
  expect(await around.getByRole('button', { name: 'Propose it' }).isDisabled()).toBe(true);
  const lesson = await keptLesson(page);
  // definition: what the teacher passes at the goal is firm
  await rosterWith(page, 'Ifeoma', lesson.exercises.slice(0, 20));
  await around.getByText('nothing yet', { exact: true }).click();
  const steps = async () => {
    await around.getByRole('button', { name: 'Propose it' }).click();
    await proposal(page).getByRole('button', { name: 'Put before it' }).waitFor();
    await settled(page);
    return proposal(page).locator('li').count();
  };
  const fromNothing = await steps();
  await around.getByText('what one student plays', { exact: true }).click();
  await around.getByText('Plays 20 of the 24 exercises here at the goal tempo.').waitFor();
  await around.getByRole('button', { name: 'Propose it' }).click();
  // definition: who has met the goal's moves before needs fewer bars
  await expect.poll(() => proposal(page).locator('li').count()).toBeLessThan(fromNothing);
});

it('[ST2300] proposes a term, writes its pages as sections behind the page, and then composes into any of them', async () => {
  const page = await show('First swing', 'compose');
  const old = exercises(await keptLesson(page));
  const term = page.locator('[data-part="term"]');
  await term.locator('summary').click();
  await term.getByRole('slider', { name: 'How many pages' }).focus();
  await page.keyboard.press('Home');
  await term.getByRole('button', { name: 'Propose a term' }).click();
  await proposal(page).getByRole('heading', { name: 'Page 2' }).waitFor();
  // definition: two pages of 24
  await proposedCount(page, 48);
  expect((await keptLesson(page)).sections).toEqual([]);
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  await expect.poll(async () => (await keptLesson(page)).sections.length).toBe(3);
  const divided = await keptLesson(page);
  expect(divided.sections.map(({ heading }) => heading)).toEqual([null, 'Page 1', 'Page 2']);
  expect(exercises(divided).slice(0, 24)).toEqual(old);
  await term.getByText('This lesson is divided into sections', { exact: false }).waitFor();
  await page.getByRole('combobox', { name: 'Part of the lesson' }).selectOption('Page 2');
  const move = page.locator('[data-part="one-move"]');
  await move.locator('summary').click();
  await move.getByRole('button', { name: 'Propose it' }).click();
  await expect.poll(() => proposal(page).locator('li').count()).toBeGreaterThan(0);
  const count = await proposal(page).locator('li').count();
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  await expect.poll(async () => (await keptLesson(page)).sections[2]?.exercises.length).toBe(24 + count);
  expect(exercises(await keptLesson(page)).slice(0, 72)).toEqual(exercises(divided));
});

it('[ST2800] mixes a review of two lessons, and makes two second passes one after another', async () => {
  const page = await openView(browser, 'First swing', 'compose');
  const old = exercises(await keptLesson(page));
  const review = page.locator('[data-part="review"]');
  await review.locator('summary').click();
  // definition: the waltz has another meter
  await expect.poll(() => review.getByRole('checkbox', { name: 'Sixteenth-note funk' }).count()).toBe(1);
  expect(await review.getByRole('checkbox', { name: 'Jazz waltz' }).count()).toBe(0);
  await review.getByText('First swing', { exact: true }).click();
  await review.getByText('Sixteenth-note funk', { exact: true }).click();
  await review.getByRole('button', { name: 'Propose it' }).click();
  await proposedCount(page, 16);
  const names = await proposal(page).locator('li h4').allTextContents();
  // definition: each of them is named after its lesson and its number there, and both lessons are in it
  expect(names.every((name) => /^(First swing|Sixteenth-note funk) \d+$/.test(name))).toBe(true);
  expect(new Set(names.map((name) => name.replace(/ \d+$/, ''))).size).toBe(2);
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBe(old.length + 16);

  const second = page.locator('[data-part="second-pass"]');
  await second.locator('summary').click();
  await second.getByText('Accents', { exact: true }).click();
  await second.getByRole('button', { name: 'Then another pass on top' }).click();
  await second.getByText(/^First: Accents/).waitFor();
  await second.getByText('Hands', { exact: true }).click();
  await second.getByRole('button', { name: 'Propose it' }).click();
  await proposedCount(page, 1);
  const told = await proposal(page).locator('li p').textContent();
  // definition: both passes are told of the one exercise
  expect(told).toMatch(/Accent/);
  expect(told).toMatch(/Hands/);
});

it('[ST2302] shows what practice says of difficulty and how sure that is, and changes nothing before it is taken', async () => {
  const page = await show('First swing', 'compose');
  const before = await keptText(page);
  const learned = page.locator('[data-part="played-difficulty"]');
  await learned.locator('summary').click();
  const look = learned.getByRole('button', { name: 'Look at what they played' });
  await look.click();
  await learned.getByText('Nobody on the roster has played exercises of this lesson yet.').waitFor();
  await rosterWith(page, 'Kaito', (await keptLesson(page)).exercises.slice(0, 12));
  await look.click();
  // definition: twelve exercises, ten rounds each
  await learned.getByText('120 rounds of 12 exercises were heard.').waitFor();
  // definition: who plays everything clean tells nothing of what is hard
  await learned.getByText('it tells no better who plays them clean', { exact: false }).waitFor();
  const row = learned.getByRole('row', { name: /^each stroke/ });
  expect(await row.textContent()).toContain(' ± ');
  await learned.getByRole('button', { name: 'Leave it as it is' }).click();
  await row.waitFor({ state: 'detached' });
  expect(await keptText(page)).toBe(before);
  await look.click();
  await learned.getByRole('button', { name: /^Take the/ }).click();
  await expect.poll(() => keptText(page)).toContain('weights:');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect.poll(() => keptText(page)).toBe(before);
});

it('[ST160] offers every cell of meter and feel, and one of my own by tapping', async () => {
  const page = await show('First swing', 'compose');
  const cells = page.getByRole('group', { name: '3 in a beat' }).getByRole('button');
  // definition: three places, each struck or not
  await expect.poll(() => cells.count()).toBe(8);
  const own = page.locator('[data-part="own-cell"]');
  await own.locator('summary').click();
  const places = own.getByRole('group', { name: 'Tap the places' }).getByRole('button');
  await places.nth(1).click();
  await places.nth(2).click();
  await places.nth(2).click();
  await own.getByRole('button', { name: 'Add to the vocabulary' }).click();
  await expect
    .poll(async () => (await keptLesson(page)).vocabulary.map((each) => each.cell.text))
    .toContain('.xX');
  await expect.poll(() => cells.count()).toBe(9);
});

it('[ST24] quotes as many figures of the trade as asked for, and names blocks after them', async () => {
  const page = await show('First swing', 'compose');
  await page.getByText('Name each block after its figure').click();
  // definition: 24 lines have room for ten blocks: one for each of eight figures, and two more
  await expect.poll(() => proposal(page).getByRole('heading', { level: 4 }).count()).toBe(10);
  const idiom = page.getByRole('slider', { name: 'Figures of the trade' });
  await idiom.focus();
  await page.keyboard.press('Home');
  await expect.poll(async () => (await keptLesson(page)).compose.idiom).toBe(0);
  await page.getByText('none: every move counts').waitFor();
  await proposedCount(page, 24);
  await proposal(page).getByRole('button', { name: 'Add after what is written' }).click();
  const names = async () => (await keptLesson(page)).exercises.flatMap(({ name }) => name ?? []);
  await expect.poll(async () => (await names()).length).toBeGreaterThan(4);
});
