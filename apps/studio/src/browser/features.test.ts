import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launch, openWindow, startDesk } from '../testing/browser.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});

afterAll(() => browser.close());

const PHONE = { width: 390, height: 844 } as const;
const VIEWS = ['', '/groove', '/compose', '/text', '/print', '/room'] as const;

async function open(page: Page, url: string, title: string, view = ''): Promise<void> {
  await page.goto(url);
  const link = page.getByRole('link', { name: `Open ${title}` });
  const lesson = await link.getAttribute('href');
  await page.goto(new URL(`${lesson}${view}`, url).href);
  await page.locator('main, .room').first().waitFor();
  await page.waitForLoadState('networkidle');
}

/** Everything on the screen that can be pressed and is less than 24 CSS pixels wide or high. */
function tooSmall(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const pressed = 'button, a[href], input, select, textarea, [role="slider"], [role="menuitem"]';
    return [...document.querySelectorAll<HTMLElement>(pressed)].flatMap((each) => {
      const target = each.closest('.thumb') ?? each.closest('label') ?? each;
      const { width, height } = target.getBoundingClientRect();
      const skipLink = each.classList.contains('skip');
      const isSmall = width > 0 && (width < 24 || height < 24) && !skipLink;
      return isSmall ? [`${each.className} ${each.textContent} ${width} x ${height}`] : [];
    });
  });
}

it.each([390, 820, 1440])(
  '[ST38] has nothing to press that is smaller than 24 pixels: %i wide',
  async (width) => {
    const { url } = await startDesk();
    const page = await openWindow(browser, url, { viewport: { width, height: 844 } });
    await page.locator('.lesson-card').nth(4).waitFor();
    // standard: WCAG 2.2, 2.5.8 Target Size (Minimum), 24 by 24 CSS pixels
    expect(await tooSmall(page)).toEqual([]);
    for (const view of VIEWS) {
      await open(page, url, 'First swing', view);
      expect(await tooSmall(page), view).toEqual([]);
    }
  },
);

it('[ST38] chooses a bar by a press anywhere on the line of difficulty, and by its keys', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: PHONE });
  await open(page, url, 'First swing', '/compose');
  const line = page.getByRole('slider', { name: 'How hard each bar is against this groove' });
  const box = await line.boundingBox();
  if (!box) throw new Error('the line is not shown');
  await line.click({ position: { x: (box.width * 9.5) / 24, y: 20 } });
  const reasons = page.locator('.reasons h3');
  // definition: the tenth of 24 bars lies between 9/24 and 10/24 of the line
  expect(await reasons.textContent()).toContain('Exercise 10:');
  await page.keyboard.press('ArrowRight');
  expect(await reasons.textContent()).toContain('Exercise 11:');
  await page.keyboard.press('End');
  expect(await line.getAttribute('aria-valuetext')).toContain('Exercise 24');
});

it('[ST39] shows every view of a lesson in sight on a phone, in English and in German', async () => {
  const { url } = await startDesk();
  for (const locale of ['en', 'de']) {
    const page = await openWindow(browser, url, { locale, viewport: PHONE });
    const lesson = await page.locator('.card-link').first().getAttribute('href');
    await page.goto(new URL(lesson ?? '', url).href);
    const tabs = page.locator('.index-tabs a');
    await tabs.nth(5).waitFor();
    const boxes = await tabs.evaluateAll((all) =>
      all.map((each) => {
        const { left, right, top } = each.getBoundingClientRect();
        return { left, right, top, cut: each.scrollWidth > each.clientWidth };
      }),
    );
    expect(boxes).toHaveLength(6);
    expect(boxes.every(({ left, right, cut }) => left >= 0 && right <= PHONE.width && !cut)).toBe(true);
    expect(new Set(boxes.map(({ top }) => top)).size).toBe(1);
  }
});

it('[ST39] cuts no line of the text, and keeps each number beside its line', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: PHONE });
  await open(page, url, 'First swing', '/text');
  const area = page.getByRole('textbox', { name: 'Text of the lesson' });
  const cut = await area.evaluate((each) => [
    each.scrollWidth - each.clientWidth,
    each.scrollHeight - each.clientHeight,
  ]);
  expect(cut.every((pixels) => pixels <= 0)).toBe(true);
  const lines = await page.locator('.line-text').allTextContents();
  expect(lines.join('\n')).toBe(await area.inputValue());
});

it('[ST39] keeps the strokes in reach on a phone and opens the other tools over the page', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: PHONE });
  await open(page, url, 'First swing');
  const box = page.locator('.pencil-box');
  const before = await page.locator('[data-exercise="2"]').boundingBox();
  const at = await box.boundingBox();
  const ledge = await page.locator('.ledge').boundingBox();
  expect((at?.y ?? 0) + (at?.height ?? 0)).toBeCloseTo(ledge?.y ?? 0, 0);
  await page.getByRole('button', { name: 'More tools for this exercise' }).click();
  await page.getByRole('textbox', { name: 'Pattern' }).waitFor();
  const after = await page.locator('[data-exercise="2"]').boundingBox();
  expect(after?.y).toBe(before?.y);
  await page.locator('[data-exercise="1"] .slot').nth(1).click();
  await page.getByRole('button', { name: 'accent', exact: true }).click();
  await expect.poll(() => page.locator('.pattern-field input').inputValue()).toMatch(/^xX/);
});
