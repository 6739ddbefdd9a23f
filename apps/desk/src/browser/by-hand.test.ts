/** Everything that a lesson can say, changed by hand on one page. */
import { formatPattern, type Lesson } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  keptLesson,
  keptText,
  openView,
  openWindow,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
  walkTo,
} from '../../../../internal/testing/browser.ts';
import { DEMO_LESSONS } from '../../../../internal/testing/demo-lessons.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

const exercises = (lesson: Lesson) =>
  lesson.exercises.map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }));

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
const pick = (page: Page, name: string) =>
  page.getByRole('radio', { name, exact: true }).click({ force: true });

it('[ST401] tells what another meter or feel does, does it, and brings all of it back in one step', async () => {
  const page = await show('First swing', 'page');
  const before = await keptText(page);
  await press(page, /^Change meter, feel and tempo/);
  await pick(page, '3/4');
  const change = page.locator('[data-part="change"]');
  await change.getByText(/strokes have no place and go/).waitFor();
  expect(await keptText(page)).toBe(before);
  await press(page, 'Change it');
  await settled(page);
  const lesson = await keptLesson(page);
  expect(lesson.meter.text).toBe('3/4');
  expect(exercises(lesson)[0]?.split(' ')).toHaveLength(3);
  await page.keyboard.press('Escape');
  await press(page, 'Undo');
  await settled(page);
  expect(await keptText(page)).toBe(before);

  // definition: 2:1 is how beats in three sound anyway, so without another writing the feel would change nothing
  await press(page, /^Change meter, feel and tempo/);
  await pick(page, 'straight');
  await page
    .locator('[data-part="change"]')
    .getByText(/can be written in two/)
    .waitFor();
  await press(page, 'Write them in two');
  await settled(page);
  const { groove, feel } = await keptLesson(page);
  expect([feel.kind, formatPattern(groove[0]?.pattern ?? { bars: [] })]).toEqual(['even', 'x xx x xx']);
  await page.keyboard.press('Escape');
  await press(page, 'Undo');
  await settled(page);
});

it('[ST402] writes a groove of two bars with accents, another limb, lead and order by touch alone', async () => {
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
  const page = await openView(browser, 'First swing', 'groove', phone);
  const tap = (name: string) => page.getByRole('button', { name, exact: true }).tap();
  await page.locator('[data-voice="ride"] [data-slot="0 0 0"]').tap();
  await tap('accent');
  await tap('More tools for this exercise');
  await tap('The same bar again');
  await page.locator('[data-voice="ride"] [data-slot="1 3 0"]').waitFor();
  await page.locator('[data-voice="hihat-foot"] [data-slot="0 1 0"]').tap();
  await page.getByRole('radio', { name: 'lead foot' }).click({ force: true });
  await tap('Close the tools');
  await page.getByRole('button', { name: 'hi-hat foot earlier' }).tap();
  await page.getByRole('combobox', { name: 'Voice that plays them' }).selectOption('tom-high');
  await settled(page);
  const { groove, limbs, layers, comping } = await keptLesson(page);
  expect(formatPattern(groove[0]?.pattern ?? { bars: [] })).toBe('X x.x x x.x | X x.x x x.x');
  expect([limbs['hihat-foot'], layers[0]?.joins, comping]).toEqual(['lead foot', ['hihat-foot'], 'tom-high']);
});

it('[ST403] makes a section, names it, writes to it and takes it out again', async () => {
  const page = await show('First swing', 'page');
  const before = await keptText(page);
  await press(page, 'Add a section');
  const heading = page.getByRole('textbox', { name: 'Heading of section 2' });
  await heading.fill('Second week');
  await heading.press('Enter');
  await settled(page);
  const { sections } = await keptLesson(page);
  expect(sections.map((each) => [each.heading, each.exercises.length])).toEqual([
    [null, 24],
    ['Second week', 1],
  ]);
  await press(page, 'More for section 2');
  await page.getByRole('menuitem', { name: 'Delete the section' }).click();
  await settled(page);
  expect(await keptText(page)).toBe(before);
});

it('[ST405] takes out what was brought in by mistake, and brings a lesson back from the bin', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  await page.getByRole('button', { name: 'More for First swing', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Delete' }).click();
  const student = (await (
    await page.request.post(`${url}api/students`, { data: { name: 'Kaito' } })
  ).json()) as { readonly id: string };
  const row = JSON.stringify({ id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00' });
  await page.request.post(`${url}api/students/${student.id}/log`, { data: { version: 1, rows: [row] } });
  await walkTo(page, '/students');
  await page.getByText('What was brought in').click();
  await page.getByRole('button', { name: /^Take out what was brought in/ }).click();
  await page.getByText('What was brought in').waitFor({ state: 'detached' });
  await page.goto(`${url}bin`);
  await page.getByRole('button', { name: 'Bring back First swing' }).click();
  await page.getByRole('button', { name: /^Bring back Kaito/ }).click();
  await page.getByText('Nothing was deleted in the last 30 days.').waitFor();
  const lessons = (await (await page.request.get(`${url}api/lessons`)).json()) as readonly unknown[];
  expect(lessons).toHaveLength(DEMO_LESSONS.length);
  const log = (await (await page.request.get(`${url}api/students/${student.id}/log`)).json()) as {
    readonly rows: readonly unknown[];
  };
  expect(log.rows).toHaveLength(1);
});
