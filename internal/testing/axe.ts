/** What an accessibility checker finds on a page. Library: axe-core, every rule that it runs by default. */
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** What axe finds: rule and element. */
export async function findings(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: AXE });
  const { violations } = await page.evaluate(() =>
    (globalThis as never as { axe: { run: () => Promise<{ violations: unknown }> } }).axe.run(),
  );
  return (violations as { id: string; nodes: { html: string }[] }[]).flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`),
  );
}
