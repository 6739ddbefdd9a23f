import { formatPattern, type Lesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import {
  keptLesson,
  keptText,
  openView,
  settled,
  sharedBrowser,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

const exercises = (lesson: Lesson) =>
  lesson.exercises.map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }));

const groove = (lesson: Lesson) =>
  Object.fromEntries(lesson.groove.map(({ voice, pattern }) => [voice, formatPattern(pattern)]));

it('[ST9] writes the groove voice by voice and says its balance in decibels and in words', async () => {
  const page = await openView(browser, 'First swing', 'groove');
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
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  while (await undo.isEnabled()) await undo.click();
  await settled(page);
  expect(groove(await keptLesson(page))).toEqual({
    ride: 'x x.x x x.x',
    'hihat-foot': '. x . x',
    bass: 'x x x x',
  });
});

it('[ST10] shows problems at their lines of the text, holds the page, and goes on when they are mended', async () => {
  const page = await openView(browser, 'First swing', 'text');
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

it('[ST24] composes the page anew with every change, keeps kept bars, and takes each change back as one step', async () => {
  const page = await openView(browser, 'First swing', 'compose');
  const before = await keptText(page);
  const old = exercises(await keptLesson(page));
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  for (const number of [2, 5])
    await page
      .getByText('Keep', { exact: true })
      .nth(number - 1)
      .click();
  await page.getByRole('button', { name: 'Another page' }).click();
  await expect.poll(async () => exercises(await keptLesson(page))).not.toEqual(old);
  const next = exercises(await keptLesson(page));
  expect(next).toHaveLength(24);
  expect([next[1], next[4]]).toEqual([old[1], old[4]]);
  await undo.click();
  await settled(page);
  expect(await keptText(page)).toBe(before);
  await page.getByRole('button', { name: /^\.x\./ }).click();
  await expect
    .poll(async () => (await keptLesson(page)).vocabulary.map((each) => each.cell.text))
    .toContain('.x.');
  const wider = await keptLesson(page);
  expect(exercises(wider).join(' ')).toContain('.x.');
  expect([exercises(wider)[1], exercises(wider)[4]]).toEqual([old[1], old[4]]);
  const count = page.getByRole('slider', { name: 'How many bars' });
  await count.focus();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(async () => exercises(await keptLesson(page)).length).toBe(23);
  await undo.click();
  await undo.click();
  await settled(page);
  expect(await keptText(page)).toBe(before);
});

it('[ST24] quotes as many figures of the trade as asked for, and names blocks after them', async () => {
  const page = await openView(browser, 'First swing', 'compose');
  await page.getByText('Name each block after its figure').click();
  const names = async () => (await keptLesson(page)).exercises.flatMap(({ name }) => name ?? []);
  // definition: 24 lines are six blocks of four
  await expect.poll(async () => (await names()).length).toBe(6);
  await page.getByRole('heading', { name: (await names())[0] ?? '', exact: true }).waitFor();
  const idiom = page.getByRole('slider', { name: 'Figures of the trade' });
  await idiom.focus();
  await page.keyboard.press('Home');
  await expect.poll(async () => (await keptLesson(page)).compose.idiom).toBe(0);
  await page.getByText('none: every move counts').waitFor();
});
