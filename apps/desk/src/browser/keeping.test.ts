import { exerciseKey, parseLesson } from '@shedbook/core';
import type { MadeLink, StoredLesson, StoredStudent } from '@shedbook/routes';
import { strToU8, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

const SHEET =
  'title: Slow twelve\nmeter: 12/8\nfeel: even\nexercises:\n  - xxx x.x x.. ...\n  - x.. xxx ... x.x\n';
const PHONE = { viewport: { width: 390, height: 844 } };

/** A student with one exercise set who sent a take. */
async function aStudent(desk: { readonly url: string }) {
  const ask = async (method: string, path: string, data?: unknown) => {
    const response = await fetch(new URL(path, desk.url), {
      method,
      ...(data === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(data) }),
    });
    return response.json() as Promise<unknown>;
  };
  const lesson = (await ask('POST', '/api/lessons', { text: SHEET })) as StoredLesson;
  const exercise = parseLesson(SHEET, 'lesson').lesson?.exercises[0];
  const key = exercise ? exerciseKey(exercise) : '';
  const { id, revision } = (await ask('POST', '/api/students', { name: 'Bram' })) as StoredStudent;
  const assignments = [{ lesson: lesson.id, exercise: key, pinned: false, note: null }];
  await ask('PUT', `/api/students/${id}`, { name: 'Bram', assignments, revision });
  const link = (await ask('POST', `/api/students/${id}/links?language=en`)) as MadeLink;
  const facts = {
    ...{ id: 'phone 1', startedAt: '2026-11-25T18:30:00+01:00', lesson: lesson.id },
    ...{ lessonTitle: 'Slow twelve', exercise: key, number: 1, form: 'loop' },
    ...{ durationSeconds: 10, verdicts: [] },
  };
  const zip = zipSync({ 'take.json': strToU8(JSON.stringify(facts)), 'take.flac': new Uint8Array(100) });
  await fetch(new URL('takes/phone%201', link.address), {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream' },
    body: new Blob([new Uint8Array(zip)]),
  });
  return { id, link: link.address };
}

/** Kinds of what is planned, break and groove left out. */
async function plannedExercises(page: Page): Promise<readonly string[]> {
  const titles = await page.locator('[data-part="plan-item"] a').allTextContents();
  return [...new Set(titles.filter((title) => title.includes('Exercise')))];
}

it('[ST3003] [ST3004] the teacher says how long recordings stay, keeps one by hand, and reads in the journal who did what', async () => {
  const desk = await startDesk();
  await aStudent(desk);
  const page = await openWindow(browser, `${desk.url}students`);
  const take = page.locator('[data-part="sent-take"]');
  await take.waitFor();
  expect(await take.getByRole('checkbox').count()).toBe(0);
  await page.getByLabel('How long recordings are kept').selectOption('8 weeks');
  await page.getByText('Set. Students see it on their next visit.').waitFor();
  await page.reload();
  await take.getByText(/else it is erased on/).waitFor();
  await take.getByText('Keep this recording').click();
  await take.getByText(/else it is erased on/).waitFor({ state: 'detached' });
  await page.getByText('Journal', { exact: true }).click();
  const journal = page.locator('[data-part="journal"]');
  await journal.getByText('The desk: kept a recording by hand (Bram)').waitFor();
  await journal.getByText('The student: sent a take (Bram)').waitFor();
  await journal.getByText('The desk: set how long recordings are kept').waitFor();
  expect(await findings(page)).toEqual([]);
  for (const width of [390, 820, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
    await expect.poll(wide, { message: `${width}` }).toBeLessThanOrEqual(width);
  }
});

it('[ST3005] a coach that is turned off proposes nothing on the desk and on the student’s page, and is turned on again', async () => {
  const desk = await startDesk();
  const { link } = await aStudent(desk);
  const page = await openWindow(browser, `${desk.url}students`);
  const coach = page.getByRole('region', { name: 'The coach' });
  const drafted = page.locator('[data-part="next-lesson"] [data-part="draft"]');
  await expect.poll(() => drafted.count()).toBeGreaterThan(1);
  const student = await openWindow(browser, link, PHONE);
  await student.locator('[data-part="plan-item"]').first().waitFor();
  expect((await plannedExercises(student)).length).toBeGreaterThan(1);
  await coach.getByText('is off', { exact: true }).click();
  await coach.getByText('Bram has what you set and nothing beside it').waitFor();
  expect(await drafted.count()).toBe(1);
  await student.reload();
  await expect.poll(() => plannedExercises(student)).toEqual(['Exercise 1']);
  await coach.getByText('is paused', { exact: true }).click();
  await coach.getByLabel('Proposes again from').fill('2020-01-01');
  await coach.getByText('What you set for Bram comes first').waitFor();
  expect(await findings(page)).toEqual([]);
  await student.reload();
  await expect.poll(async () => (await plannedExercises(student)).length).toBeGreaterThan(1);
});
