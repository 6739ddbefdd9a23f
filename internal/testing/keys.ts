/** For browser tests: somebody who has no mouse. */
import type { Page } from 'playwright-core';

/** What has the focus: its role where it has one, else its tag, and its accessible name. */
async function focused(page: Page): Promise<string> {
  const snapshot = await page.evaluate(() => {
    const here = document.activeElement as HTMLElement | null;
    const labels = [...((here as HTMLInputElement | null)?.labels ?? [])].map((label) => label.textContent);
    const name = here?.getAttribute('aria-label') ?? labels[0] ?? here?.textContent ?? '';
    return `${here?.getAttribute('role') ?? here?.tagName.toLowerCase()} ${name.trim()}`;
  });
  return snapshot;
}

/** Most tab stops of a screen that a test walks along. */
const MOST_STOPS = 90;

/** Presses Tab (or Shift+Tab) until something whose name matches has the focus. @throws Error when nothing has. */
export async function tabTo(page: Page, name: RegExp, back = false): Promise<void> {
  const passed: string[] = [];
  for (let i = 0; i < MOST_STOPS; i += 1) {
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
    const here = await focused(page);
    if (name.test(here)) return;
    passed.push(here);
  }
  throw new Error(`No tab stop matches ${name}: ${passed.join(' | ')}`);
}

/** Presses keys one after another; a space stands between their names. */
export async function press(page: Page, keys: string): Promise<void> {
  for (const key of keys.split(' ')) await page.keyboard.press(key);
}
