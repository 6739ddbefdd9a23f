import type { StoredLesson } from '@shedbook/routes';
import { deskGerman, GERMAN, LANGUAGES, loadDesk } from '@shedbook/words';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  openWindow,
  settled,
  sharedBrowser,
  startDesk,
  turnTo,
  walkTo,
} from '../../../../internal/testing/browser.ts';
import { ballFrames, openListening, waitForStrokes, watchBall } from '../../../../internal/testing/sound.ts';

const browser = await sharedBrowser();

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
}

/** Every text of a catalogue as a pattern, each variant of a message by itself; what is filled in may be anything. */
function patternsOf(messages: unknown): readonly RegExp[] {
  if (typeof messages === 'object' && messages !== null) return Object.values(messages).flatMap(patternsOf);
  const message = String(messages);
  const variants = message.startsWith('.')
    ? [...message.matchAll(/\{\{(.*?)\}\}(?!\})/g)].map((each) => each[1] ?? '')
    : [message];
  return variants
    .map((variant) => variant.split(/\{[^}]*\}/))
    .filter((parts) => parts.length === 1 || /\p{L}{3}/u.test(parts.join('')))
    .map((parts) => new RegExp(`^${parts.map(escaped).join('.+')}$`, 'i'));
}

/** Every text of the interface: what is read, and what is read out. */
function textsOf(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const texts: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (node.parentElement?.closest('script, style, textarea, pre')) continue;
      texts.push(node.textContent ?? '');
    }
    for (const element of document.body.querySelectorAll('*')) {
      for (const name of [
        'aria-label',
        'aria-description',
        'aria-valuetext',
        'placeholder',
        'title',
        'alt',
      ]) {
        texts.push(element.getAttribute(name) ?? '');
      }
    }
    return [...new Set(texts.map((text) => text.trim().replaceAll(/\s+/g, ' ')))];
  });
}

/** Every text that a lesson file has as a value, whole: what a teacher wrote. Its keys are English and no part of it. */
function valuesIn(data: unknown): readonly string[] {
  if (typeof data === 'object' && data !== null) return Object.values(data).flatMap(valuesIn);
  return [String(data)];
}

/** All views of a lesson but the first. */
const OTHER_VIEWS = ['groove', 'compose', 'text', 'print', 'room'] as const;

it('[ST28] shows a German reader no word that is not in the German catalogue', async () => {
  const { words: german } = await loadDesk('de');
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { locale: 'de-DE', viewport: { width: 1440, height: 900 } });
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
  const href = await page.getByRole('link', { name: /First swing/ }).getAttribute('href');
  const texts = new Set(await textsOf(page));
  const lookAt = async () => {
    for (const text of await textsOf(page)) texts.add(text);
  };
  await page.getByRole('button', { name: german.desk.more({ title: 'First swing' }) }).click();
  await page.getByRole('menu').waitFor();
  await lookAt();
  await page.keyboard.press('Escape');
  await walkTo(page, href ?? '');
  await page.locator('main').first().waitFor();
  await lookAt();
  for (const view of OTHER_VIEWS) {
    await turnTo(page, view);
    await lookAt();
  }
  await walkTo(page, href ?? '');
  for (const opener of [german.page.keys, german.sound.settings]) {
    await page.getByRole('button', { name: opener, exact: true }).click();
    await page.getByRole('dialog').waitFor();
    await lookAt();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
  const lessons = (await (await fetch(new URL('/api/lessons', url))).json()) as readonly StoredLesson[];
  // The editor shows a lesson file line by line; anywhere else only its values are the teacher's own.
  const lines = lessons.flatMap(({ text }) =>
    text.split('\n').map((line) => line.trim().replaceAll(/\s+/g, ' ')),
  );
  const own = new Set([...lines, ...lessons.flatMap(({ text }) => valuesIn(parse(text)))]);
  // common practice: bpm and the paper Letter are the same in German
  const patterns = [
    // library: react-aria-components says "Schließen" by itself to a screen reader in a popover
    ...patternsOf([deskGerman, GERMAN.sentences, GERMAN.tongue, LANGUAGES.en, 'bpm', 'Letter', 'Schließen']),
  ];
  const plain = (text: string) => text.replaceAll(/^[x.]+$/g, '').trim();
  const isKnown = (text: string) =>
    !/\p{L}{3}/u.test(plain(text)) || own.has(text) || patterns.some((pattern) => pattern.test(text));
  // A count is a number and what is counted after it, „2 ole“.
  const pieces = (text: string) => text.split(/[,:;·()]/).map((piece) => piece.trim().replace(/^\d+ /, ''));
  const left = [...texts]
    .map((text) => text.replace(/^[-+]?\d+ dB, |^\+ /, ''))
    .filter((text) => !isKnown(text) && !pieces(text).every(isKnown));
  expect(texts.size).toBeGreaterThan(150);
  expect(left).toEqual([]);
});

it('[ST34] leads a first visit from the demo lesson to a printed sheet, and can be put away for good', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: { width: 1280, height: 900 } });
  const step = page.locator('[data-part="guide"] [aria-current="step"]');
  await expect.poll(() => step.textContent()).toBe('Open a lesson');
  await page.getByText('For drum-set teachers: from a groove to a sheet that students take home').waitFor();
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await expect.poll(() => step.textContent()).toBe('Write a bar');
  await page.locator('[data-slot]').nth(1).click();
  await settled(page);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect.poll(() => step.textContent()).toBe('Hear it');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  const guide = page.locator('[data-part="guide"]');
  for (const next of ['Set the groove', 'Choose cells', 'Print it']) {
    await guide.getByRole('link', { name: next }).click();
    await expect.poll(() => step.textContent()).toBe(next);
  }
  await expect.poll(() => step.textContent()).toBe('Print it');
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Download PDF' }).click();
  expect((await download).suggestedFilename()).toMatch(/\.pdf$/);
  await page.getByRole('button', { name: 'Put this away' }).click();
  await page.goto(url);
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  expect(await page.locator('[data-part="guide"]').count()).toBe(0);
});

it('[ST35] moves nothing but from count to count where less motion is asked for', async () => {
  const { url } = await startDesk();
  const options = { reducedMotion: 'reduce', viewport: { width: 1280, height: 900 } } as const;
  const page = await openListening(browser, url, options);
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  await watchBall(page);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await waitForStrokes(page, 20);
  const shown = (await ballFrames(page, 60)).filter((frame) => frame.x !== null);
  // definition: a bar of four beats has four places to come down on, all at one height
  expect(new Set(shown.map((frame) => frame.x)).size).toBeLessThanOrEqual(4);
  expect(new Set(shown.map((frame) => frame.y)).size).toBe(1);
  // definition: an animation that lasts no longer than a frame is none
  const moving = await page.evaluate(() =>
    document.getAnimations().filter((each) => Number(each.effect?.getComputedTiming().duration) > 17),
  );
  expect(moving).toEqual([]);
});
