import { readFile } from 'node:fs/promises';
import { formatPattern, type Lesson, parseLesson } from '@shedbook/core';
import type { CDPSession, Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  keptText,
  openWindow,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
} from '../../../../internal/testing/browser.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

async function openFirstSwing(options: Parameters<typeof openWindow>[2]): Promise<Page> {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, options);
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await page.locator('[data-part="line-editor"]').first().waitFor();
  await settled(page);
  return page;
}

async function patterns(page: Page): Promise<readonly string[]> {
  const { lesson } = parseLesson(await keptText(page), 'kept') as { lesson: Lesson };
  return lesson.exercises.map((each) => formatPattern(each.parts[0]?.pattern ?? { bars: [] }));
}

it.each([
  ['clicked', null],
  ['tapped', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
] as const)(
  '[ST5] puts a stroke where a slot is %s and takes it away again; comments survive',
  async (how, options) => {
    const page = await (options ? openFirstSwing(options) : show('First swing', 'page'));
    const slot = page.locator('[data-exercise="1"] [data-slot="0 2 1"]');
    const press = (target: Locator) => (how === 'tapped' ? target.tap() : target.click());
    const before = await keptText(page);
    await press(slot);
    await settled(page);
    expect((await patterns(page))[0]).toBe('x.. ... .x. ...');
    expect(await slot.getAttribute('aria-label')).toContain('stroke');
    const text = await keptText(page);
    const comments = (await readFile('demo/first-swing.lesson.yaml', 'utf8')).match(/#.*/g) ?? [];
    expect(comments.length).toBeGreaterThan(1);
    expect(text.match(/#.*/g)).toEqual(comments);
    await press(slot);
    await settled(page);
    expect(await keptText(page)).toBe(before);
    await press(page.locator('[data-exercise="3"] [data-part="resting-press"]'));
    await page.locator('[data-exercise="3"][data-chosen]').waitFor();
    await press(page.locator('[data-exercise="3"] [data-slot="0 0 0"]'));
    await settled(page);
    expect((await patterns(page))[2]).toBe('x.. x.. ... ...');
  },
);

/** Brings an exercise and its neighbours on screen. */
async function bringUp(page: Page, exercise: number): Promise<void> {
  await page
    .locator(`[data-exercise="${exercise}"]`)
    .evaluate((item) => item.scrollIntoView({ block: 'center' }));
}

/** The middle of an exercise's number, on screen. */
async function handle(page: Page, exercise: number) {
  const number = page.locator(`[data-exercise="${exercise}"] [data-part="number"]`);
  const box = await number.boundingBox();
  if (!box) throw new Error(`exercise ${exercise} has no number on screen`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, top: box.y };
}

async function dragByMouse(page: Page, from: number, to: number): Promise<void> {
  const start = await handle(page, from);
  const end = await handle(page, to);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(start.x, start.y + 20, { steps: 4 });
  await page.mouse.move(end.x, end.top + 2, { steps: 12 });
  await page.mouse.up();
}

async function dragByTouch(page: Page, from: number, to: number): Promise<void> {
  const touch: CDPSession = await page.context().newCDPSession(page);
  const start = await handle(page, from);
  const end = await handle(page, to);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number) => {
    const at = { x: start.x + (end.x - start.x) * share, y: start.y + (end.top + 2 - start.y) * share };
    return touch.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [at] });
  };
  await send('touchStart', 0);
  for (let i = 1; i <= 12; i += 1) await send('touchMove', i / 12);
  await send('touchEnd', 1);
}

it.each([
  ['a mouse', dragByMouse, null],
  ['a finger', dragByTouch, { viewport: { width: 820, height: 1180 }, hasTouch: true }],
] as const)(
  '[ST7] moves an exercise by dragging its number with %s; numbers follow',
  async (_, drag, options) => {
    const page = await (options ? openFirstSwing(options) : show('First swing', 'page'));
    const before = await patterns(page);
    await bringUp(page, 6);
    await drag(page, 8, 5);
    await settled(page);
    const moved = [...before.slice(0, 4), before[7], ...before.slice(4, 7), ...before.slice(8)];
    await expect.poll(() => patterns(page)).toEqual(moved);
    const numbers = await page.locator('[data-part="exercises"] [data-part="number"]').allTextContents();
    expect(numbers).toEqual(before.map((_pattern, index) => String(index + 1)));
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => patterns(page)).toEqual(before);
  },
);

it('[ST7] moves an exercise by keys and says where it went', async () => {
  const page = await show('First swing', 'page');
  const before = await patterns(page);
  await page.locator('[data-exercise="3"] [data-part="resting-press"]').click();
  await page.locator('[data-exercise="3"] [data-slot][tabindex="0"]').waitFor();
  await page.keyboard.press('Alt+ArrowUp');
  await page.getByText('Exercise 3 is now 2.').waitFor();
  await page.keyboard.press('Alt+ArrowUp');
  await page.getByText('Exercise 2 is now 1.').waitFor();
  await settled(page);
  expect(await patterns(page)).toEqual([before[2], before[0], before[1], ...before.slice(3)]);
});
