import { readFileSync } from 'node:fs';
import { passEntry } from '@shedbook/coach';
import { Bpm, exerciseKey, parseLesson } from '@shedbook/core';
import type { HourList, MadeLink, StoredLesson, StoredStudent } from '@shedbook/routes';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';
import { textOfPdf } from '../../../../internal/testing/pdf.ts';

const browser = await sharedBrowser();

const SHEET =
  'title: Slow twelve\nmeter: 12/8\ntempo: {start: 90, goal: 150, step: 6}\nfeel: even\nexercises:\n  - xxx x.x x.. ...\n  - x.. xxx ... x.x\n  - ... x.x xxx x..\n';
const PRIVATE = 'Wrist is tense: ask the parents.';

/** A student who was passed in the first exercise at 120 quarters, and has not played the second. */
async function aWeek(desk: { readonly url: string }) {
  const post = async (path: string, data: unknown, method = 'POST') => {
    const response = await fetch(new URL(path, desk.url), {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(data),
    });
    return response.json() as Promise<unknown>;
  };
  const lesson = (await post('/api/lessons', { text: SHEET })) as StoredLesson;
  const keys = (parseLesson(SHEET, 'lesson').lesson?.exercises ?? []).map(exerciseKey);
  const { id, revision } = (await post('/api/students', { name: 'Kaito' })) as StoredStudent;
  const assignments = keys.slice(0, 2).map((exercise) => ({
    ...{ lesson: lesson.id, exercise, pinned: false, note: null, toBpm: 120, by: null },
  }));
  await post(`/api/students/${id}`, { name: 'Kaito', assignments, revision }, 'PUT');
  const pass = passEntry({
    ...{ id: 'teacher 1', startedAt: '2026-11-24T10:00:00Z', lesson: lesson.id },
    ...{ exercise: keys[0] ?? '', bpm: Bpm(120) },
  });
  await post(`/api/students/${id}/log`, { version: 1, rows: [JSON.stringify(pass)] });
  const link = (await post(`/api/students/${id}/links?language=en`, null)) as MadeLink;
  return { id, lesson: lesson.id, keys, link: link.address };
}

async function hoursOf(page: Page, id: string): Promise<HourList> {
  return (await page.request.get(new URL(`/api/students/${id}/hours`, page.url()).href)).json();
}

/** Everything fits beside the edges of a screen as wide as this. */
async function fits(page: Page, width: number): Promise<void> {
  await page.setViewportSize({ width, height: 900 });
  const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
  await expect.poll(wide, { message: `${width}` }).toBeLessThanOrEqual(width);
}

it('[ST3000] [ST3001] [ST3002] the teacher writes on a lesson, takes the draft with changes, sets it by one press and undoes it', async () => {
  const desk = await startDesk();
  const { id, lesson, keys, link } = await aWeek(desk);
  const page = await openWindow(browser, `${desk.url}students`);
  const book = page.locator('[data-part="hours"]');
  await book.getByRole('button', { name: 'Write on a lesson' }).click();
  await book.getByRole('radio', { name: 'was there' }).waitFor();
  await book.getByRole('textbox', { name: 'What was done' }).fill('Feathering; exercise 1 passed.');
  await book.getByRole('textbox', { name: 'Notes for me alone' }).fill(PRIVATE);
  await book.getByRole('heading', { name: 'Lesson book' }).click();
  await expect.poll(async () => (await hoursOf(page, id)).hours[0]?.notes).toBe(PRIVATE);

  const draft = page.locator('[data-part="next-lesson"]');
  const items = draft.locator('[data-part="draft"]');
  // definition: 12/8 is counted in dotted quarters, so 120 quarters a minute are 80; two steps further is 132, so 88
  await items.nth(0).getByText('You passed it at 80. On towards 88.').waitFor();
  await items.nth(1).getByText('Set, and not played yet.').waitFor();
  await draft.getByRole('spinbutton', { name: 'Up to, for Slow twelve 1 (bpm)' }).fill('90');
  await draft.getByRole('checkbox', { name: 'Set Slow twelve 2' }).setChecked(false, { force: true });
  await draft.getByLabel('The next lesson is on').fill('2030-01-08');
  expect(await findings(page)).toEqual([]);
  for (const width of [390, 820, 1440]) await fits(page, width);
  // what is new waits while exercise 2 is not played yet; the teacher takes it all the same, and puts it first
  const third = draft.getByRole('checkbox', { name: 'Set Slow twelve 3' });
  expect(await third.isChecked()).toBe(false);
  await third.setChecked(true, { force: true });
  const earlier = draft.getByRole('button', { name: 'Slow twelve 3 earlier' });
  await earlier.click();
  await earlier.click();
  expect(await earlier.isDisabled()).toBe(true);
  // the focus goes with it, to the neighbour where it goes no further
  expect(await page.locator(':focus').getAttribute('aria-label')).toBe('Slow twelve 3 later');
  await draft.getByRole('button', { name: /^Set (?:this|these) \d exercises? for Kaito$/ }).click();
  await page.getByText('Set for Kaito, and written into the lesson of today.').waitFor();
  await book.getByText('Slow twelve 1, up to 90, for Tuesday, January 8').waitFor();
  const first = { lesson, exercise: keys[0], toBpm: 135, by: '2030-01-08' };
  const { hours } = await hoursOf(page, id);
  expect(hours).toHaveLength(1);
  expect(hours[0]).toMatchObject({ attendance: 'came', notes: PRIVATE });
  expect(hours[0]?.set).toMatchObject([{ lesson, exercise: keys[2], by: '2030-01-08' }, first]);

  // the student's page says how far and for when, and nothing of the notes
  const student = await openWindow(browser, link, { viewport: { width: 390, height: 844 } });
  await student.getByText(/Your teacher set this\. Up to 90, to be ready in [\d,]+ days\./).waitFor();
  expect(await student.content()).not.toContain('tense');

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await hoursOf(page, id)).hours[0]?.set).toEqual([]);
  const kept = await page.request.get(new URL(`/api/students/${id}`, desk.url).href);
  expect(((await kept.json()) as StoredStudent).assignments.map(({ toBpm }) => toBpm)).toEqual([120, 120]);

  // what was passed is on the page for parents
  const coming = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Progress page of Kaito' }).click();
  const printed = new Uint8Array(readFileSync(await (await coming).path()));
  expect(await textOfPdf(printed)).toContain('Kaito: how practice is going');

  await book.getByRole('button', { name: /^Erase the lesson of/ }).click();
  await expect.poll(async () => (await hoursOf(page, id)).hours).toEqual([]);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await hoursOf(page, id)).hours[0]?.notes).toBe(PRIVATE);
});

it('[ST3000] in German the book, the draft and its reasons are German', async () => {
  const desk = await startDesk();
  await aWeek(desk);
  const page = await openWindow(browser, `${desk.url}students`, { locale: 'de-DE' });
  const draft = page.locator('[data-part="next-lesson"]');
  await draft.getByText('Bestanden bei 80. Weiter bis 88.').waitFor();
  await draft.getByText('Hausaufgabe, noch nicht gespielt.').waitFor();
  await page.getByRole('button', { name: 'In eine Stunde schreiben' }).click();
  await page.getByRole('radio', { name: 'war da', exact: true }).waitFor();
  expect(await findings(page)).toEqual([]);
});
