import type { Voice } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  HEARING_LESSON,
  hostHearingPack,
  lessonOf,
  openWithDevices,
  planSound,
  playLoop,
  soundOf,
  soundPlan,
  willPlay,
} from '../../../../internal/testing/hearing.ts';

/** Two voices, so that the check is short. */
const TEXT = HEARING_LESSON.replace('  ride: x x.x x x.x\n  hihat-foot: . x . x\n', '');
const lesson = lessonOf(TEXT);
const BPM = 160;
/** Two bars of four at 160. */
const LOOP_SECONDS = 3;
/** Strokes fall so long after the page shows the first count: a hand that is late, well within its turn. */
const LATE_SECONDS = 0.3;

const browser = await sharedBrowser();
const host = await hostHearingPack(TEXT);

const loop = playLoop(lesson, 1, BPM, () => ({ lateMs: 4 }));

/** Bass drum and snare in their turns: a count of four at 120, then eight strokes. */
function checkSound(): Float32Array {
  const strokes = (['bass', 'snare'] as readonly Voice[]).flatMap((voice, turn) => {
    const like = loop.find(({ stroke }) => stroke.voice === voice);
    if (!like) throw new Error(`no ${voice}`);
    return Array.from({ length: 8 }, (_, i) => ({
      stroke: like.stroke,
      timeSeconds: 6 * turn + 2 + 0.5 * i + LATE_SECONDS,
    }));
  });
  return soundOf([strokes], 13);
}

/** Lets the microphone hear a line check as soon as the page shows whose turn it is. */
async function willCheck(page: Page): Promise<void> {
  await page.evaluate(planSound, { ...soundPlan(checkSound(), BPM), afterSeconds: 0 });
  await page.evaluate(() => {
    const watch = new MutationObserver(() => {
      if (!document.querySelector('[data-part="turns"]')) return;
      watch.disconnect();
      const { plans, context } = window.deskOfTest;
      for (const plan of plans.splice(0)) plan(context?.currentTime ?? 0);
    });
    watch.observe(document.body, { subtree: true, childList: true });
  });
}

async function listen(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Use the microphone' }).first().click();
  await page.locator('[data-ear="on"]').waitFor();
}

const open = (page: Page) => page.getByRole('button', { name: 'Teach it your kit' }).click();
const play = (page: Page) => page.getByRole('button', { name: 'Play', exact: true }).click();
const stop = (page: Page) => page.getByRole('button', { name: 'Stop', exact: true }).click();

/** As if what is kept had been learnt by an ear before this one. */
async function growOld(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('shedbook-practice');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('notes', 'readwrite');
          const notes = transaction.objectStore('notes');
          const asking = notes.get('line check Attic');
          asking.onsuccess = () => {
            const row = asking.result;
            notes.put({ ...row, kept: { ...row.kept, kit: { ...row.kept.kit, weights: '00000000' } } });
          };
          transaction.onerror = () => reject(transaction.error);
          transaction.oncomplete = () => resolve();
        };
      }),
  );
}

it('[ST8803] [ST8805] [ST8806] a kit is taught, kept, heard with and named in the report; it is given another name; an old one is said to be; it is forgotten', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await open(page);
  const sheet = page.getByRole('dialog', { name: 'Teach it your kit' });
  await sheet.getByText('2 voices').waitFor();
  await sheet.getByRole('button', { name: 'Use the microphone' }).click();
  const begin = sheet.getByRole('button', { name: 'Begin the line check' });
  // broken off, it begins anew
  await begin.click();
  await sheet.getByText('Bass drum: get ready').waitFor();
  expect(await findings(page)).toEqual([]);
  await sheet.getByRole('button', { name: 'Break off' }).click();
  await willCheck(page);
  await begin.click();
  await sheet.getByText('Bass drum: play').waitFor();
  await sheet.getByText('Snare: play').waitFor();
  await sheet.getByText('Every voice was heard.', { exact: true }).waitFor();
  await sheet.getByLabel('What you call this kit').fill('Cellar');
  await sheet.getByRole('button', { name: 'Keep it' }).click();
  await sheet.getByText('the ear hears with “Cellar”').waitFor();
  await sheet.getByLabel('What you call this kit').fill('Attic');
  await sheet.getByRole('button', { name: 'Change its name' }).click();
  await sheet.getByRole('button', { name: 'Forget “Attic”' }).waitFor();
  expect(await sheet.getByRole('radio').count()).toBe(2);
  expect(await sheet.getByRole('radio', { name: 'Attic' }).isChecked()).toBe(true);
  expect(await findings(page)).toEqual([]);
  await sheet.getByRole('button', { name: 'Done' }).click();

  await willPlay(page, soundOf([loop, loop], LOOP_SECONDS), BPM);
  await play(page);
  await page.locator('[data-part="rounds"] li').first().waitFor();
  await stop(page);
  await page.getByText('Heard with the line check “Attic” of this kit.').waitFor();

  await growOld(page);
  await page.reload();
  await listen(page);
  await play(page);
  await page.getByText('The line check “Attic” was made with an earlier ear').waitFor();
  await stop(page);
  await open(page);
  await sheet.getByText('“Attic” was made with an earlier ear and is not used.').waitFor();
  await sheet.getByRole('button', { name: 'Forget “Attic”' }).click();
  await sheet.locator('[data-part="kits"]').waitFor({ state: 'detached' });
  await sheet.getByRole('button', { name: 'Done' }).click();
  await page.getByText('The line check “Attic” was made with an earlier ear').waitFor({ state: 'detached' });
});
