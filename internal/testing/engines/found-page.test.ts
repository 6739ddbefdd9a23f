import { expect, it } from 'vitest';
import { press } from './engine.ts';
import { type Found, FoundPage } from './found-page.ts';

const LATE = () => Promise.reject(new Error('not asked of this page'));

/** A page that draws its button anew until the third look, said in the words of WebDriver and of two libraries. */
class RestlessPage extends FoundPage {
  readonly #looks = [
    () => Promise.reject(new Error('POST /execute/sync: stale element reference Stale element found')),
    () => Promise.resolve({ click: () => Promise.reject(new Error('Node is detached from document')) }),
    () => Promise.resolve({ click: () => Promise.reject(new Error('Element is not attached to the DOM')) }),
    () => Promise.resolve({ click: () => Promise.resolve(void this.presses.push(1)) }),
  ];
  readonly presses: number[] = [];
  readonly go = LATE;
  readonly reload = LATE;
  readonly run = LATE;
  readonly resize = LATE;
  readonly picture = LATE;
  readonly close = LATE;

  protected async find(): Promise<Found | null> {
    return (await this.#looks.shift()?.()) ?? null;
  }
}

/** A page where something stands over every button. */
class CoveredPage extends RestlessPage {
  protected override async find(): Promise<Found | null> {
    return { click: () => Promise.reject(new Error('element click intercepted')) };
  }
}

it('[ST2704] presses once what the page draws anew while it is looked for', async () => {
  const page = new RestlessPage();
  await press(page, { css: 'button' });
  expect(page.presses).toEqual([1]);
});

it('[ST2704] does not press again what could not be pressed for another reason', async () => {
  await expect(press(new CoveredPage(), { css: 'button' })).rejects.toThrow('intercepted');
});
