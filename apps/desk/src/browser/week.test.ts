import { exerciseKey, parseLesson } from '@shedbook/core';
import type { StoredLesson, StoredStudent } from '@shedbook/routes';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startGuardedDesk } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

const PASSPHRASE = 'brushes on a coated head';
const PHONE = { viewport: { width: 390, height: 844 }, bypassCSP: true };

const LESSONS = [
  'title: Second choice\ntempo: 200\nfeel: triplet\nexercises:\n  - ..x ... ..x x..\n',
  'title: First of all\ntempo: 200\nfeel: triplet\nexercises:\n  - x.. ..x x.x ...\n',
];

async function signIn(page: Page): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Passphrase' });
  await field.fill('not this one');
  await page.keyboard.press('Enter');
  await page.getByText('That is not the passphrase.').waitFor();
  expect(await findings(page)).toEqual([]);
  await field.fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await page.getByText('Nobody on the roster yet.').waitFor();
}

/** Sets the only exercise of two lessons for the student, through the page that is signed in. */
async function setTwo(page: Page): Promise<void> {
  const post = (path: string, data: unknown) => page.request.post(new URL(path, page.url()).href, { data });
  const made: StoredLesson[] = [];
  for (const text of LESSONS) made.push(await (await post('/api/lessons', { text })).json());
  const [student] = (await (await page.request.get(new URL('/api/students', page.url()).href)).json()) as [
    StoredStudent,
  ];
  const assignments = made.toReversed().map(({ id, text }) => {
    const exercise = parseLesson(text, 'lesson').lesson?.exercises[0];
    return { lesson: id, exercise: exercise ? exerciseKey(exercise) : '', pinned: false, note: 'Lightly.' };
  });
  const { name, revision } = student;
  const saved = await page.request.put(new URL(`/api/students/${student.id}`, page.url()).href, {
    data: { name, assignments, revision },
  });
  expect(saved.status()).toBe(200);
  await page.reload();
}

/** Whether anything that was played is kept on the device, whoever it is of. */
async function isStretchKept(): Promise<boolean> {
  const found = (await indexedDB.databases()).filter(({ name }) => name?.startsWith('shedbook-practice '));
  for (const { name = '' } of found) {
    const opening = indexedDB.open(name);
    const database = await new Promise<IDBDatabase>((resolve) => {
      opening.onsuccess = () => resolve(opening.result);
    });
    const asked = database.transaction('notes').objectStore('notes').getAllKeys();
    const keys = await new Promise<readonly IDBValidKey[]>((resolve) => {
      asked.onsuccess = () => resolve(asked.result);
    });
    database.close();
    if (keys.some((key) => String(key).startsWith('entry '))) return true;
  }
  return false;
}

const SENDING = '[data-part="sending"]';

it('[ST460] a week goes without a file in anybody’s hands: set, opened, played, sent, heard of, taken back', async () => {
  const teacher = await openWindow(
    browser,
    `${await startGuardedDesk(PASSPHRASE, 'http://lessons.example')}students`,
    { bypassCSP: true },
  );
  await signIn(teacher);
  await teacher.getByRole('button', { name: 'New student' }).click();
  await teacher.getByRole('textbox', { name: 'Name' }).fill('Kaito');
  await teacher.keyboard.press('Enter');
  await teacher.getByRole('heading', { name: 'Kaito' }).waitFor();
  await setTwo(teacher);
  await teacher.getByRole('button', { name: 'Make a private link for Kaito' }).click();
  const told = await teacher.getByRole('textbox', { name: 'Address of the private link' }).inputValue();
  expect(told).toMatch(/^http:\/\/lessons\.example\/practice\/[\w-]{43}\/$/);
  expect(await findings(teacher)).toEqual([]);
  await teacher.getByRole('button', { name: 'Done' }).click();

  const address = new URL(new URL(told).pathname, teacher.url()).href;
  const student = await openWindow(browser, address, PHONE);
  await student.getByText('Kaito plays').waitFor();
  // the teacher's order, across lessons
  const items = student.locator('[data-part="plan-item"]', { hasText: 'Your teacher set this. Lightly.' });
  await expect
    .poll(() => items.locator('a').allTextContents())
    .toEqual(['First of all, Exercise 1', 'Second choice, Exercise 1']);
  expect(await findings(student)).toEqual([]);
  await items.first().getByRole('link').click();
  await student.getByRole('button', { name: 'Play', exact: true }).click();
  await student.getByRole('button', { name: 'Stop', exact: true }).waitFor();
  await expect.poll(() => student.evaluate(isStretchKept), { timeout: 20_000 }).toBe(true);
  await student.getByRole('button', { name: 'Stop', exact: true }).click();
  await student.goto(address);
  await student.locator(`${SENDING}[data-state="sent"]`).waitFor();

  await teacher.reload();
  await teacher.getByText('played today', { exact: true }).waitFor();
  await teacher.getByRole('button', { name: 'Take back link 1' }).click();
  await teacher.getByText('The link is taken back.').waitFor();
  expect((await student.request.get(address)).status()).toBe(404);
});
