/**
 * What a teacher does at the desk in a lesson, told in one engine: a bar is written and taken back, played, changed while
 * it sounds, taken away by the device and gone on with; then the lesson room, where there is no MIDI, every view in a
 * window of a tablet, and the sheet.
 *
 * Everything is the engine's own: clocks, sound thread, drawing, MIDI.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { StoredLesson } from '@shedbook/routes';
import { startServer } from '@shedbook/server';
import { expect } from 'vitest';
import { addressOf, DEMO, SITE } from '../browser.ts';
import { againWhereItBroke } from './again.ts';
import { type Engine, type EnginePage, press, sees, until } from './engine.ts';
import { ballMoves, textOf } from './looks.ts';
import { laySite } from './site.ts';

const PLAY = { css: 'button', named: 'Play' };
const STOP = { css: 'button', named: 'Stop' };

/** The desk's count of bars, or '' where it does not begin with a text. */
function readBar(start: string): string {
  const says = document.querySelector('[data-part="ledge-count"]')?.textContent ?? '';
  return says.startsWith(start) ? says : '';
}

/** The text of the open lesson as the server keeps it; null where that is, or is not, another text. */
async function readKept(
  another: { readonly than: string; readonly is: boolean } | null,
): Promise<string | null> {
  const [, id] = /\/lesson\/([\w-]+)/.exec(location.pathname) ?? [];
  const lessons = (await (await fetch('/api/lessons')).json()) as readonly StoredLesson[];
  const text = lessons.find((each) => each.id === id)?.text ?? '';
  return another === null || (text !== another.than) === another.is ? text : null;
}

/** A stroke is written into the first bar, kept, and taken back. */
async function writes(page: EnginePage): Promise<void> {
  const slot = '[data-exercise="1"] [data-slot="0 2 1"]';
  await sees(page, { css: slot });
  const than = (await page.run(readKept, null)) ?? '';
  await press(page, { css: slot });
  await until(page, 'the stroke, kept', readKept, { than, is: true });
  await press(page, { css: 'button', named: 'Undo' });
  await until(page, 'the bar as it was, kept', readKept, { than, is: false });
}

/** It plays, ball and count move, the tempo changes while it sounds. */
async function plays(page: EnginePage): Promise<void> {
  await press(page, PLAY);
  await until(page, 'the first bar', readBar, '1 ');
  await ballMoves(page);
  await press(page, { css: 'button', named: 'Faster' });
  await until(page, 'the first bar once more', readBar, '1 ');
  await ballMoves(page);
}

/** The device takes the sound away; that is said, nothing counts in silence, and it goes on. */
async function goesOn(page: EnginePage): Promise<void> {
  await page.run(() => window.deskOfTest.context?.suspend());
  await sees(page, PLAY);
  expect(await page.run(textOf, '[data-part="ledge"] [role="status"]')).toContain('The sound was taken away');
  expect(await page.run(readBar, '')).toBe('');
  await press(page, PLAY);
  await until(page, 'that it goes on', readBar, '1 ');
  await press(page, STOP);
}

/** Whether the open form says what came of the question for MIDI. */
function saysOfMidi(): boolean {
  const says = document.querySelector('dialog[open] [role="status"]')?.textContent ?? '';
  return /has no MIDI|not to allow|nothing is plugged in|Hears/.test(says);
}

/** The lesson room: the next exercise, its ball and beat; a foot switch by MIDI is not there, and nothing waits for it. */
async function teaches(page: EnginePage): Promise<void> {
  await press(page, { css: '[data-part="index-tabs"] a', named: 'Lesson room' });
  await sees(page, { css: '[data-part="room-number"]' });
  await press(page, { css: 'button', named: 'Next exercise' });
  await until(
    page,
    'the second exercise',
    () => document.querySelector('[data-part="room-number"] strong')?.textContent === '2',
  );
  await press(page, PLAY);
  await until(page, 'a beat', () =>
    /^[1-4]$/.test(document.querySelector('[data-part="room-beat"]')?.textContent ?? ''),
  );
  await ballMoves(page);
  await press(page, STOP);
  await press(page, { css: 'button', named: 'Foot switch' });
  await press(page, { css: 'dialog[open] button', named: 'Listen for MIDI' });
  await until(page, 'word of MIDI', saysOfMidi);
  await press(page, { css: 'dialog[open] button', named: 'Done' });
  await press(page, { css: 'button', named: 'Leave the lesson room' });
}

/** What is there once a view has come, by its tab. */
const VIEWS: Readonly<Record<string, string>> = {
  Groove: 'main svg',
  Compose: 'main input[type="range"]',
  Text: 'main textarea',
  Page: '[data-exercise="1"] [data-slot]',
};

/** No view is wider than its window. */
async function staysOnPaper(page: EnginePage): Promise<void> {
  await page.resize(1024, 768);
  for (const [named, css] of Object.entries(VIEWS)) {
    await press(page, { css: '[data-part="index-tabs"] a', named });
    await sees(page, { css });
    const [wide, window] = await page.run(() => [document.documentElement.scrollWidth, innerWidth] as const);
    expect(wide, named).toBeLessThanOrEqual(window);
  }
}

/** The sheet is engraved, and comes as a PDF. */
async function prints(page: EnginePage): Promise<void> {
  await press(page, { css: '[data-part="index-tabs"] a', named: 'Print' });
  await sees(page, { css: '[data-part="print-page"]' });
  const sheet = async () => {
    const { href } = document.querySelector('a[download]') as HTMLAnchorElement;
    return [...new Uint8Array(await (await fetch(href)).arrayBuffer())].slice(0, 4);
  };
  // standard: ISO 32000-1, 7.5.2: a file begins with %PDF
  expect(String.fromCharCode(...(await page.run(sheet)))).toBe('%PDF');
}

/** The page that tries a device says that this one plays, and how long a second of its sound is. */
async function tries(page: EnginePage): Promise<void> {
  await page.go(new URL('/sound', await page.run(() => location.href)).href);
  await press(page, { css: 'button', named: 'Try the sound' });
  await until(page, 'the clocks', () => document.querySelector('[data-row="audio"] dd')?.textContent);
  const read = (row: string) => document.querySelector(`[data-row="${row}"] dd`)?.textContent ?? '';
  expect(await page.run(read, 'plays')).toMatch(/plays/);
  // definition: a clock that goes shows more than nothing; how fast it goes on a busy machine is the machine's
  expect(Number.parseInt(await page.run(read, 'audio'), 10)).toBeGreaterThan(0);
  expect(await page.run(read, 'keeps')).toBe('yes');
}

/** A desk with the first demo lesson, open in an engine; all of it is gone afterwards. */
async function onDesk(engine: Engine, tell: (page: EnginePage) => Promise<void>): Promise<void> {
  const devices = { delaySeconds: 0.03, loopback: false, isStrict: false, microphone: 'there' as const };
  const site = laySite(SITE, { devices: { ...devices, kit: 'own' }, kit: 'own' });
  const dataDir = mkdtempSync(join(tmpdir(), 'shedbook-desk-'));
  const server = await startServer({ port: 0, dataDir, staticDir: site.path, seedLessonsDir: DEMO });
  const page = await engine.open();
  try {
    await page.go(await addressOf(server.url, 'First swing', 'page'));
    await tell(page);
  } finally {
    await page.close();
    await server.close();
    site.remove();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

/** Tells the story. */
export function tellDesk(engine: Engine): Promise<void> {
  return againWhereItBroke(() =>
    onDesk(engine, async (page) => {
      await writes(page);
      await plays(page);
      await goesOn(page);
      await teaches(page);
      await staysOnPaper(page);
      await prints(page);
      await tries(page);
    }),
  );
}
