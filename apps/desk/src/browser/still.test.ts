import { expect, it } from 'vitest';
import { addressOf, openWindow, sharedBrowser, startDesk } from '../../../../internal/testing/browser.ts';
import { shiftsOf } from '../../../../internal/testing/shifts.ts';

const browser = await sharedBrowser();

it.each([
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
])(
  '[ST3900] leaves what can be pressed where it is while the rest comes, at $width pixels',
  async (viewport) => {
    const { url } = await startDesk();
    const seen = [
      [url, 'a[href^="/lesson/"]'],
      [await addressOf(url, 'First swing', 'page'), '[data-slot]'],
      [await addressOf(url, 'First swing', 'print'), '[data-part="print-page"]'],
    ] as const;
    for (const [address, there] of seen) {
      const page = await openWindow(browser, 'about:blank', { viewport });
      // source: Layout Instability (W3C): nothing that was seen has moved where no shift is reported
      expect(await shiftsOf(page, address, there), address).toEqual([]);
    }
  },
);
