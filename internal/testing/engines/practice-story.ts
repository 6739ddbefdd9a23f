/**
 * What a student does with a pack, from the first visit to the evening without a network, told in one engine.
 *
 * The microphone hears what the test plays into it; everything else is the engine's own: clocks, sound thread, storage,
 * service worker, MIDI.
 */
import { seededRandom } from '@shedbook/core';
import { expect } from 'vitest';
import { HEARING_LESSON, lessonOf, planSound, playLoop, soundOf, soundPlan } from '../hearing.ts';
import { hostFolder, type StaticHost, temporaryFolder } from '../practice.ts';
import { againWhereItBroke } from './again.ts';
import { type Engine, type EnginePage, press, sees, until } from './engine.ts';
import { ballMoves, readCounter, textOf } from './looks.ts';
import { layPack } from './site.ts';

const LESSON = lessonOf(HEARING_LESSON);
const BPM = LESSON.tempo.startBpm;
/** Two bars of four beats. */
const ROUND_SECONDS = (2 * 4 * 60) / BPM;

const PLAY = { css: 'button', named: 'Play' };
const STOP = { css: 'button', named: 'Stop' };

/** Plays, sees ball and count move, changes the tempo while it sounds. */
async function plays(page: EnginePage): Promise<void> {
  await press(page, PLAY);
  await until(page, 'the first bar', readCounter, 'bar 1 of 2');
  await ballMoves(page);
  await press(page, { css: 'button', named: 'Faster' });
  await until(page, 'the second round', readCounter, 'round 2');
  expect(await page.run(textOf, '[data-part="tempo"] strong')).toBe(String(BPM + 4));
  await press(page, { css: 'button', named: 'Slower' });
}

/** The device takes the sound away in the second bar; it goes on from there. */
async function goesOn(page: EnginePage): Promise<void> {
  await until(page, 'the second bar', readCounter, 'bar 2 of 2');
  await page.run(() => window.deskOfTest.context?.suspend());
  await sees(page, PLAY);
  // definition: what is silent moves no count
  expect(await page.run(readCounter, '')).toBe('');
  await press(page, PLAY);
  await until(page, 'the second bar once more', readCounter, 'bar 2 of 2');
  await press(page, STOP);
}

/** The student plays every limb: of the page's own sound the click is left, as one plays with it. */
async function takesEveryLimb(page: EnginePage): Promise<void> {
  await press(page, { css: 'button', named: 'More' });
  for (const limb of [
    'right hand: ride',
    'left hand: snare',
    'right foot: bass drum',
    'left foot: hi-hat foot',
  ])
    await press(page, { css: 'label', named: limb });
  await press(page, { css: 'button', named: 'Done' });
}

/** Plays into the microphone, reads what is said of it, keeps the take. */
async function records(page: EnginePage): Promise<void> {
  await takesEveryLimb(page);
  await press(page, { css: 'button', named: 'Use the microphone' });
  await sees(page, { css: 'button', named: 'Stop listening' });
  // published: Hellmer & Madison 2015: professional drummers scatter by several ms
  const { next } = seededRandom('an evening');
  const round = playLoop(LESSON, 1, BPM, () => ({ lateMs: 24 * (next() - next()) }));
  const sound = soundOf([round, round], ROUND_SECONDS);
  await page.run(planSound, soundPlan(sound, BPM));
  await press(page, PLAY);
  await sees(page, { css: '[data-part="rounds"] li' });
  await press(page, STOP);
  const verdict = () => document.querySelector('[data-part="rounds"] li')?.getAttribute('data-verdict') ?? '';
  expect(await page.run(verdict), await page.run(textOf, '[data-part="after-loop"]')).toBe('clean');
  await until(
    page,
    'what a teacher would say',
    () => document.querySelector('[data-part="after-loop"]')?.textContent,
  );
  await press(page, { css: 'button', named: 'Keep this take' });
  await until(page, 'that the take is kept', () => document.body.textContent?.includes('The take is kept.'));
}

/** MIDI is not there, or nobody said yes to it: that is said, and nothing waits for it. */
async function hasNoKit(page: EnginePage): Promise<void> {
  await press(page, { css: 'button', named: 'Stop listening' });
  await press(page, { css: 'button', named: 'Use an electronic kit' });
  await sees(page, { css: '[data-part="refusal"]' });
}

/** Everything is there after the page was opened anew. */
async function remembers(page: EnginePage, url: string): Promise<void> {
  await page.go(url);
  await page.reload();
  await press(page, { css: 'h2', named: 'What you have played' });
  await until(page, 'the log', () => document.querySelector('[data-part="log"] tbody tr')?.textContent);
  expect(await page.run(textOf, '[data-part="log"] tbody tr')).toMatch(/^Exercise 1.*160 bpm/);
  await press(page, { css: 'h2', named: 'Takes' });
  await sees(page, { css: '[data-part="take"]' });
}

/** Without a network page, sound and printed sheet are there. */
async function goesWithoutNetwork(page: EnginePage, host: StaticHost): Promise<void> {
  await until(page, 'the worker', () => navigator.serviceWorker.controller !== null);
  await host.stop();
  await page.go(`${host.url}#2`);
  await page.reload();
  await press(page, PLAY);
  await until(page, 'the first bar without a network', readCounter, 'bar 1 of 2');
  await press(page, STOP);
  const sheet = async () =>
    [...new Uint8Array(await (await fetch('files/sheet.pdf')).arrayBuffer())].slice(0, 4);
  // standard: ISO 32000-1, 7.5.2: a file begins with %PDF
  expect(String.fromCharCode(...(await page.run(sheet)))).toBe('%PDF');
}

/** A pack on a host, open in an engine; all of it is gone afterwards. */
async function onPack(
  engine: Engine,
  kit: 'own' | 'light',
  tell: (page: EnginePage, host: StaticHost) => Promise<void>,
): Promise<void> {
  const folder = temporaryFolder();
  const devices = { delaySeconds: 0.03, loopback: false, isStrict: false, microphone: 'there' as const };
  await layPack(HEARING_LESSON, folder.path, { devices: { ...devices, kit: 'own' }, kit });
  const host = await hostFolder(folder.path);
  const page = await engine.open();
  try {
    await page.go(`${host.url}#1`);
    await tell(page, host);
  } finally {
    await page.close();
    await host.stop();
    folder.remove();
  }
}

/** Tells the story. */
export function tellPractice(engine: Engine): Promise<void> {
  return againWhereItBroke(() =>
    onPack(engine, 'own', async (page, host) => {
      await plays(page);
      await goesOn(page);
      await records(page);
      await hasNoKit(page);
      await remembers(page, host.url);
      await goesWithoutNetwork(page, host);
    }),
  );
}

/** Tells its beginning. */
export function beginPractice(engine: Engine): Promise<void> {
  return onPack(engine, 'light', plays);
}
