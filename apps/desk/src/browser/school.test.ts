import type { StoredLesson } from '@shedbook/routes';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startSchool } from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();

const HEADS = 'brushes on a coated head';
const ANAS = 'sticks on a wooden table';

/** A device of its own that signs in by finger. Source: Chrome DevTools Protocol, WebAuthn domain. */
async function withFinger(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('WebAuthn.enable');
  await session.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      ...{ protocol: 'ctap2', transport: 'internal', hasResidentKey: true, hasUserVerification: true },
      ...{ isUserVerified: true, automaticPresenceSimulation: true },
    },
  });
}

async function addStudent(page: Page, name: string): Promise<void> {
  await page.goto(new URL('/students', page.url()).href);
  await page.getByRole('button', { name: 'New student' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill(name);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name }).first().waitFor();
}

it('[ST7400] [ST7401] [ST7402] [SE7408] lets a teacher in by a letter and a passkey, and a head hand students over', async () => {
  const { url, letters } = await startSchool(HEADS, ['Ana']);
  const ana = await openWindow(browser, letters[0] ?? '');
  await withFinger(ana);
  await ana.getByRole('heading', { name: 'You are invited' }).waitFor();
  expect(await findings(ana)).toEqual([]);
  await ana.getByLabel('Your passphrase').fill(ANAS);
  await ana.getByLabel('The same once more').fill('another');
  await ana.keyboard.press('Enter');
  await ana.getByText('The two are not the same.').waitFor();
  await ana.getByLabel('The same once more').fill(ANAS);
  await ana.keyboard.press('Enter');
  await ana.getByRole('button', { name: 'Sign out (Ana)' }).waitFor();
  expect(new URL(ana.url()).hash).toBe('');
  await addStudent(ana, 'Kaito');
  // a passkey of her own, by which she comes in again
  await ana.getByRole('button', { name: 'Make a passkey on this device' }).click();
  await ana.getByText('From now on this device signs you in.').waitFor();
  await ana.goto(url);
  await ana.getByRole('button', { name: 'Sign out (Ana)' }).click();
  await ana.getByRole('button', { name: 'Sign in with a passkey' }).waitFor();
  expect(await findings(ana)).toEqual([]);
  const answering = ana.waitForRequest(/session\/passkey$/);
  await ana.getByRole('button', { name: 'Sign in with a passkey' }).click();
  await ana.getByRole('button', { name: 'Sign out (Ana)' }).waitFor();
  // what the device answered opens nothing a second time
  const data = (await answering).postDataJSON() as unknown;
  expect((await ana.request.post(`${url}api/session/passkey`, { data })).status()).toBe(403);

  const head = await openWindow(browser, `${url}students`);
  await head.getByLabel('Passphrase').fill(HEADS);
  await head.keyboard.press('Enter');
  const teachers = head.getByRole('region', { name: 'Teachers' });
  await teachers.getByText('Ana').first().waitFor();
  // what was refused before the form came is said nowhere any more
  expect(await head.getByText('Sign in first').count()).toBe(0);
  expect(await head.getByText('Kaito').count()).toBe(1);
  await teachers.getByText('1 student').click();
  expect(await findings(head)).toEqual([]);
  await teachers.getByLabel('Who teaches Kaito').selectOption('First teacher');
  await head.getByText('Kaito is with First teacher from now on').waitFor();
  await head.getByRole('heading', { name: 'Kaito' }).first().waitFor();
  // and is gone from hers, and so is a passkey that she removes
  await ana.goto(`${url}students`);
  await ana.getByText('Nobody on the roster yet.').waitFor();
  await ana.getByRole('button', { name: 'Remove passkey 1' }).click();
  await ana.getByText('It signs nobody in any more.').waitFor();
  expect(await ana.getByRole('region', { name: 'Teachers' }).count()).toBe(0);

  const lesson = await head.request.post(`${url}api/lessons`, { data: { text: 'title: Of the head\n' } });
  const { id } = (await lesson.json()) as StoredLesson;
  await ana.goto(`${url}lesson/${id}/text`);
  const text = ana.getByRole('textbox', { name: 'Text of the lesson' });
  await text.fill('title: Of somebody else\n');
  await ana.getByText('Another teacher made this. Duplicate it to change it.').waitFor();
  await expect.poll(() => text.inputValue()).toBe('title: Of the head\n');
});
