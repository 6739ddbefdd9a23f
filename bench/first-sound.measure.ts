/** What `first-sound.bench.mjs` measures: run by vitest, since the engines' helpers are written for it. */
import { writeFileSync } from 'node:fs';
import { median } from '@shedbook/signal';
import { it } from 'vitest';
import { CHROMIUM } from '../internal/testing/engines/chromium.ts';
import { type Engine, press, sees, until } from '../internal/testing/engines/engine.ts';
import { FIREFOX } from '../internal/testing/engines/firefox.ts';
import { layPack } from '../internal/testing/engines/site.ts';
import { WEBKIT } from '../internal/testing/engines/webkit.ts';
import { HEARING_LESSON } from '../internal/testing/hearing.ts';
import { hostFolder, temporaryFolder } from '../internal/testing/practice.ts';

const ROUNDS = 5;
/** Until the page has made its kit and rests. */
const REST_MS = Number(process.env['SHEDBOOK_REST_MS'] ?? 20_000);

declare global {
  interface Window {
    /** From the press on Play to the first stroke at the loudspeaker, in ms; null until it was given out. */
    firstSoundMs: number | null;
  }
}

/** Runs in the page: notes when Play is pressed, and when its first stroke will leave the loudspeaker. */
function watchFirst(): void {
  let pressedMs = 0;
  window.firstSoundMs = null;
  const note = () => {
    pressedMs = performance.now();
  };
  window.addEventListener('click', note, { capture: true, once: true });
  const hear = (event: Event) => {
    const { strokes, heardSample, sampleRate } = (event as CustomEvent).detail;
    const aheadMs = ((strokes[0].sample - heardSample()) / sampleRate) * 1000;
    window.firstSoundMs ??= performance.now() + aheadMs - pressedMs;
  };
  window.addEventListener('shedbook:strokes', hear, { once: true });
}

async function measure(
  engine: Engine,
  url: string,
): Promise<{ readonly firstMs: number; readonly againMs: number }> {
  const page = await engine.open();
  await page.go(`${url}#1`);
  await sees(page, { css: 'button', named: 'Play' });
  await new Promise((resolve) => setTimeout(resolve, REST_MS));
  const play = async () => {
    await page.run(watchFirst);
    await press(page, { css: 'button', named: 'Play' });
    const ms = await until(page, 'the first sound', () => window.firstSoundMs);
    await press(page, { css: 'button', named: 'Stop' });
    return Number(ms);
  };
  const firstMs = await play();
  const againMs = await play();
  await page.close();
  return { firstMs, againMs };
}

it.each([CHROMIUM, FIREFOX, WEBKIT])(
  'measures $name',
  async (engine) => {
    const folder = temporaryFolder();
    await layPack(HEARING_LESSON, folder.path, { kit: 'own', everyFrame: true });
    const host = await hostFolder(folder.path);
    const found: Awaited<ReturnType<typeof measure>>[] = [];
    for (let round = 0; round < ROUNDS; round += 1) found.push(await measure(engine, host.url));
    await host.stop();
    folder.remove();
    const of = (key: 'firstMs' | 'againMs') => median(found.map((each) => each[key]));
    const row = {
      first: of('firstMs'),
      again: of('againMs'),
      all: found.map(({ firstMs }) => Math.round(firstMs)),
    };
    writeFileSync(`${process.env['SHEDBOOK_FOUND']}/${engine.name}.json`, JSON.stringify(row));
  },
  900_000,
);
