import { readFile } from 'node:fs/promises';
import { addEntry, EMPTY_LOG, printPracticeLog } from '@shedbook/coach';
import { Bpm, exerciseKey, parseLesson, Seconds } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import {
  addressOf,
  openWindow,
  settled,
  sharedBrowser,
  sharedDesk,
  startDesk,
  turnTo,
  walkTo,
} from '../../../../internal/testing/browser.ts';
import { coverPage, PHONES, underNotch } from '../../../../internal/testing/notch.ts';
import type { View } from '../shared/address.ts';

const browser = await sharedBrowser();
const show = sharedDesk(browser);

const PHONE = { width: 390, height: 844 } as const;
/** All views but the first. */
const OTHER_VIEWS = ['groove', 'compose', 'text', 'print', 'room'] as const;

async function open(page: Page, url: string, title: string, view: View = 'page'): Promise<void> {
  await page.goto(await addressOf(url, title, view));
  await page.locator('main, [data-part="room"]').first().waitFor();
  await page.waitForLoadState('networkidle', { timeout: 30_000 });
}

/**
 * Everything on the screen that can be pressed and is less wide or high than so many CSS pixels. On a phone slots of a bar
 * may be narrower: a beat of them is one target. What is there for readers of screens alone nobody presses.
 */
function tooSmall(page: Page, least: number): Promise<readonly string[]> {
  return page.evaluate((pixels) => {
    const pressed = 'button, a[href], input, select, textarea, [role="slider"], [role="menuitem"]';
    return [...document.querySelectorAll<HTMLElement>(pressed)].flatMap((each) => {
      const target = each.closest('label') ?? each;
      const { width, height } = target.getBoundingClientRect();
      const skipLink = each.classList.contains('skip');
      const isApart = skipLink || each.closest('[style*="clip"]') !== null;
      const wanted = each.matches('[data-slot]') ? 24 : pixels;
      const isSmall = width > 0 && (width < wanted || height < wanted) && !isApart;
      return isSmall ? [`${each.className} ${each.textContent} ${width} x ${height}`] : [];
    });
  }, least);
}

it('[ST38] has nothing to press that is smaller than 24 pixels, or than 44 on a phone', async () => {
  const page = await show('First swing', 'page');
  const expectLargeTargets = async (view: string) => {
    for (const width of [390, 820, 1440]) {
      await page.setViewportSize({ width, height: 844 });
      // standard: WCAG 2.2, 2.5.8 Target Size (Minimum), 24 by 24 CSS pixels; 2.5.5 (Enhanced), 44 by 44
      await expect
        .poll(() => tooSmall(page, width < 400 ? 44 : 24), { message: `${view} ${width} wide` })
        .toEqual([]);
    }
  };
  await expectLargeTargets('page');
  for (const view of OTHER_VIEWS) {
    await turnTo(page, view);
    await expectLargeTargets(view);
  }
  await walkTo(page, '/');
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  await expectLargeTargets('/');
});

it('[ST38] chooses a bar by a press anywhere on the line of difficulty, and by its keys', async () => {
  const page = await show('First swing', 'compose', PHONE);
  const line = page.getByRole('slider', { name: 'How hard each bar is against this groove' });
  const box = await line.boundingBox();
  if (!box) throw new Error('the line is not shown');
  await line.click({ position: { x: (box.width * 9.5) / 24, y: 20 } });
  const reasons = page.locator('[data-part="reasons"] h3');
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
    const address = await addressOf(url, 'First swing', 'page');
    const page = await openWindow(browser, address, { locale, viewport: PHONE });
    const tabs = page.locator('[data-part="index-tabs"] a');
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
  const page = await show('First swing', 'text', PHONE);
  const area = page.getByRole('textbox', { name: 'Text of the lesson' });
  const cut = await area.evaluate((each) => [
    each.scrollWidth - each.clientWidth,
    each.scrollHeight - each.clientHeight,
  ]);
  expect(cut.every((pixels) => pixels <= 0)).toBe(true);
  const lines = await page.locator('[data-part="line-text"]').allTextContents();
  expect(lines.join('\n')).toBe(await area.inputValue());
});

it('[ST39] keeps the strokes in reach on a phone and opens the other tools over the page', async () => {
  const page = await show('First swing', 'page', PHONE);
  const box = page.locator('[data-part="pencil-box"]');
  const at = await box.boundingBox();
  const ledge = await page.locator('[data-part="ledge"]').boundingBox();
  expect((at?.y ?? 0) + (at?.height ?? 0)).toBeCloseTo(ledge?.y ?? 0, 0);
  await page.getByRole('button', { name: 'More tools for this exercise' }).click();
  await page.getByRole('textbox', { name: 'Pattern' }).waitFor();
  const chosen = await page.locator('[data-exercise="1"] [data-part="line-editor"]').boundingBox();
  const opened = await box.boundingBox();
  expect((chosen?.y ?? 0) + (chosen?.height ?? 0)).toBeLessThanOrEqual(opened?.y ?? 0);
  expect(chosen?.y ?? -1).toBeGreaterThanOrEqual(0);
  await page.locator('[data-exercise="1"] [data-slot]').nth(1).click();
  await page.getByRole('button', { name: 'accent', exact: true }).click();
  await expect.poll(() => page.locator('input[spellcheck="false"]').inputValue()).toMatch(/^xX/);
});

it('[ST3700] nothing lies under what a phone covers, upright and on its side', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url);
  const expectClear = async (view: string) => {
    for (const phone of PHONES) {
      await coverPage(page, phone);
      expect(await underNotch(page, phone), `${view} ${phone.viewport.width} wide`).toEqual([]);
    }
  };
  await page.locator('[data-part="lesson-card"]').nth(4).waitFor();
  await expectClear('/');
  await page.getByRole('link', { name: 'Open First swing' }).click();
  await page.locator('[data-view="page"] [data-slot]').first().waitFor();
  await expectClear('page');
  for (const view of ['text', 'room'] as const) {
    await turnTo(page, view);
    await expectClear(view);
  }
  await walkTo(page, '/students');
  await page.getByRole('heading', { level: 1 }).waitFor();
  await expectClear('students');
});

/** MIDI that the test plays on: messages are sent with `sendMidi`. */
function fakeMidi(): void {
  const input = Object.assign(new EventTarget(), { state: 'connected', name: 'Two-button switch' });
  const access = Object.assign(new EventTarget(), { inputs: new Map([['1', input]]) });
  Object.assign(navigator, { requestMIDIAccess: async () => access });
  Object.assign(window, {
    sendMidi: (...bytes: readonly number[]) =>
      input.dispatchEvent(Object.assign(new Event('midimessage'), { data: Uint8Array.from(bytes) })),
  });
}

function sendMidi(page: Page, ...bytes: readonly number[]): Promise<void> {
  return page.evaluate(
    (sent) => (globalThis as never as { sendMidi: (...all: readonly number[]) => void }).sendMidi(...sent),
    bytes,
  );
}

it('[ST100] learns a foot switch by one press, turns exercises with it, and knows it again after a reload', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, 'about:blank');
  await page.addInitScript(fakeMidi);
  await open(page, url, 'First swing', 'room');
  await page.getByRole('button', { name: 'Foot switch' }).click();
  await page.getByRole('button', { name: 'Listen for MIDI' }).click();
  await page.getByText('Hears Two-button switch.').waitFor();
  await page.getByRole('button', { name: 'Learn: Next exercise' }).click();
  await page.getByText('Press the switch now').waitFor();
  await sendMidi(page, 0xb0, 64, 127);
  await page.getByText('controller 64, channel 1').waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
  const number = page.locator('[data-part="room-number"] strong');
  expect(await number.textContent()).toBe('1');
  await sendMidi(page, 0xb0, 64, 0);
  await sendMidi(page, 0xb0, 64, 127);
  await expect.poll(() => number.textContent()).toBe('2');
  await page.reload();
  await number.waitFor();
  await expect
    .poll(async () => {
      await sendMidi(page, 0xb0, 64, 127);
      await sendMidi(page, 0xb0, 64, 0);
      return Number(await number.textContent());
    })
    .toBeGreaterThan(1);
});

it('[ST101] changes between two settings by one key while it plays', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, 'about:blank', { viewport: { width: 1440, height: 900 } });
  await open(page, url, 'First swing');
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
  await page.keyboard.press('c');
  await page.getByRole('button', { name: 'setting B is heard' }).waitFor();
  await page.getByRole('button', { name: 'More sound settings' }).click();
  const layer = page.getByRole('radiogroup', { name: 'Layers' }).getByRole('radio', { checked: true });
  expect(await layer.evaluate((each) => each.closest('label')?.textContent)).not.toBe('all');
  await page
    .getByRole('radiogroup', { name: 'What is set below belongs to setting' })
    .getByText('A', { exact: true })
    .click();
  expect(await layer.evaluate((each) => each.closest('label')?.textContent)).toBe('all');
  await page.keyboard.press('c');
  expect(await layer.evaluate((each) => each.closest('label')?.textContent)).not.toBe('all');
  await page.keyboard.press('Escape');
  expect(await page.getByRole('button', { name: 'Stop', exact: true }).isVisible()).toBe(true);
});

it('[ST102] loops a bar by its number and by a key, on the page and in the room', async () => {
  const page = await show('Straight-eighth bossa', 'page');
  const second = page.getByRole('button', { name: 'Loop bar 2' });
  await second.click();
  expect(await second.getAttribute('aria-pressed')).toBe('true');
  await page.getByText('Exercise 1, bar 2').waitFor();
  await second.click();
  expect(await second.getAttribute('aria-pressed')).toBe('false');
  await page.keyboard.press('Alt+l');
  await page.getByText('Exercise 1, bar 1').waitFor();
  await page.goto(`${page.url()}/room`);
  await page.getByRole('button', { name: 'Loop bar 1' }).waitFor();
  await page.keyboard.press('l');
  await page.keyboard.press('l');
  expect(await page.getByRole('button', { name: 'Loop bar 2' }).getAttribute('aria-pressed')).toBe('true');
  await page.keyboard.press('ArrowRight');
  await page.getByText('Exercise 2', { exact: true }).waitFor();
});

it('[ST103] mirrors the plan of the limbs for a left-handed set-up', async () => {
  const page = await show('First swing', 'groove');
  const plan = page.getByRole('list', { name: 'Who plays what, seen from the throne' }).getByRole('listitem');
  expect(await plan.nth(1).textContent()).toBe('right handride');
  await page.getByText('left-handed', { exact: true }).click();
  await expect.poll(() => plan.nth(0).textContent()).toBe('left handride');
  await settled(page);
  await page.reload();
  await expect.poll(() => plan.nth(0).textContent()).toBe('left handride');
});

it('[ST104] writes in the second voice of an exercise slot by slot', async () => {
  const page = await show('First swing', 'page');
  await page.getByRole('button', { name: 'Add a voice' }).click();
  await page.getByRole('menuitem', { name: 'bass drum' }).click();
  const editor = page.locator('[data-part="line-editor"]');
  await page.getByRole('button', { name: 'bass drum', pressed: true }).waitFor();
  await editor.locator('[data-slot]').nth(5).click();
  const field = page.locator('input[spellcheck="false"]');
  await expect.poll(() => field.inputValue()).toBe('... ..x ... ...');
  await page.keyboard.press('v');
  await page.getByRole('button', { name: 'snare', pressed: true }).waitFor();
  await expect.poll(() => field.inputValue()).not.toBe('... ..x ... ...');
  await settled(page);
  await turnTo(page, 'text');
  const text = await page.getByRole('textbox', { name: 'Text of the lesson' }).inputValue();
  expect(text).toMatch(/bass: "?\.\.\. \.\.x \.\.\. \.\.\./);
});

/** The log of a student of First swing who played exercise 3 today and missed its stroke now and then. */
async function practiceLog(): Promise<string> {
  const { lesson } = parseLesson(await readFile('demo/first-swing.lesson.yaml', 'utf8'), 'lesson');
  const exercise = lesson?.exercises[2];
  if (!exercise) throw new Error('the demo lesson has no third exercise');
  const place = { bar: 1, beat: 2, slot: 1 };
  const faults = [{ kind: 'missed', voice: 'snare', place, amount: 1 }] as const;
  const loops = Array.from({ length: 8 }, (_, index) =>
    index % 2 === 0
      ? ({ bpm: Bpm(80), verdict: 'clean', faults: [] } as const)
      : ({ bpm: Bpm(80), verdict: 'loose', faults } as const),
  );
  const entry = {
    id: 'phone 1',
    device: 'phone',
    startedAt: new Date().toISOString().replace(/\.\d+Z$/, '+00:00'),
    durationSeconds: Seconds(600),
    lesson: 'first-swing',
    exercise: exerciseKey(exercise),
    form: 'loop',
    heardBy: 'ear',
    loops,
  } as const;
  return printPracticeLog(addEntry(EMPTY_LOG, entry));
}

it('[ST26] axe finds nothing on the roster, light or dark', async () => {
  const { url } = await startDesk();
  await fetch(new URL('/api/students', url), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Kaito' }),
  });
  const page = await openWindow(browser, new URL('/students', url).href, { viewport: PHONE });
  await page.getByRole('region', { name: 'Draft for the next lesson' }).waitFor();
  // library: axe-core 4.14, every rule that it runs by default, those about colour in both schemes
  expect(await findings(page)).toEqual([]);
});

it('[ST109] keeps a roster, takes a practice log in, shows what slips, and sets what comes next', async () => {
  const { url } = await startDesk();
  const page = await openWindow(browser, url, { viewport: { width: 1440, height: 900 } });
  await page.getByRole('button', { name: 'Students' }).click();
  await page.getByText('Nobody on the roster yet').waitFor();
  for (const name of ['Kaito', 'Sunniva']) {
    await page.getByRole('button', { name: 'New student' }).click();
    await page.getByRole('textbox', { name: 'Name' }).fill(name);
    await page.keyboard.press('Enter');
    await page.getByRole('navigation', { name: 'Roster' }).getByText(name).waitFor();
  }
  await page.getByRole('navigation', { name: 'Roster' }).getByText('Sunniva').click();
  const bringIn = async () => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Add a recording or a practice log' }).click();
    const buffer = Buffer.from(await practiceLog());
    await (await chooser).setFiles({ name: 'log.json', mimeType: 'application/json', buffer });
  };
  await bringIn();
  await page.getByRole('navigation', { name: 'Roster' }).getByText('played today').waitFor();
  const limbs = page.getByRole('region', { name: 'Limb by limb' });
  // definition: 4 of 8 loops lacked a stroke of the left hand
  const left = limbs.getByText('nothing wrong in 4 of 8 loops; else mostly strokes missing');
  await left.waitFor();
  await bringIn();
  await page.getByText('What was there already counts once.').waitFor();
  expect(await left.count()).toBe(1);
  // one home for what comes next: the draft, which says why
  await page.getByRole('checkbox', { name: 'Set First swing 1' }).waitFor();
  await page.getByRole('button', { name: 'Set this 1 exercise for Sunniva' }).click();
  const set = page.getByRole('region', { name: 'Set', exact: true });
  await set.locator('[data-part="assigned"]').waitFor();
  const note = set.getByRole('textbox', { name: 'Note for the student' });
  await note.fill('Slowly, by Tuesday.');
  await note.blur();
  await page.getByText(/Your teacher set this\. .*Slowly, by Tuesday/).waitFor();
  // standard: WCAG 2.2, 2.5.8 Target Size (Minimum), 24 by 24 CSS pixels
  expect(await tooSmall(page, 24)).toEqual([]);
  await page.reload();
  await page.getByRole('navigation', { name: 'Roster' }).getByText('Sunniva').click();
  expect(await note.inputValue()).toBe('Slowly, by Tuesday.');
  await page.getByRole('button', { name: 'Make a lesson of what is set' }).click();
  await page.locator('[data-exercise] p').getByText('Slowly, by Tuesday.').waitFor();
  expect(await page.getByRole('textbox', { name: 'Title of the lesson' }).inputValue()).toMatch(
    /, for Sunniva$/,
  );
  await page.goBack();
  await page.getByRole('navigation', { name: 'Roster' }).getByText('Sunniva').click();
  await page.getByRole('button', { name: 'Take Sunniva off the roster' }).click();
  // The lesson that was made can be undone too, until this is said.
  await page.getByText('Sunniva is off the roster.').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('navigation', { name: 'Roster' }).getByText('Sunniva').waitFor();
});
