/** What an accessibility checker finds on a page. Library: axe-core, every rule that it runs by default. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** Its code, which the browser's own tools take in: a page's policy lets nobody else's scripts in. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Axe's rules about colour that run by default, the only ones that a colour scheme can bear on. */
const COLOUR = ['color-contrast', 'link-in-text-block'];

/** What axe finds: rule and element. `only` names rules, where the others were run on the same page already. */
async function run(page: Page, only?: readonly string[]): Promise<readonly string[]> {
  const options = { resultTypes: ['violations'], ...(only ? { runOnly: only } : {}) };
  const { violations, passes } = await page.evaluate((given) => {
    const { axe } = globalThis as never as { axe: { run: (options: object) => Promise<Results> } };
    return axe.run(given);
  }, options);
  if (passes.length === 0) throw new Error('axe checked nothing');
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`));
}

/** What axe hands out, as far as it is read. */
interface Results {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
  readonly passes: readonly unknown[];
}

/** The colour of plain text, which every scheme sets. */
const ink = (page: Page) => page.evaluate(() => getComputedStyle(document.body).color);

/**
 * What axe finds on a page in the light and in the dark: every rule in one scheme, those about colour in the other as
 * well. The same elements stand in both, with the same names, roles and places; a scheme changes their colours only.
 * @throws Error when the page looks the same in both schemes, or nothing was checked.
 */
export async function findings(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.evaluate(AXE);
  const [light, all] = [await ink(page), await run(page)];
  await page.emulateMedia({ colorScheme: 'dark' });
  if ((await ink(page)) === light) throw new Error('There is no dark scheme');
  const dark = await run(page, COLOUR);
  await page.emulateMedia({ colorScheme: 'light' });
  return [...all, ...dark.map((each) => `dark: ${each}`)];
}
