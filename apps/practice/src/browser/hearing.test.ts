import { seededRandom } from '@shedbook/core';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { sharedBrowser } from '../../../../internal/testing/browser.ts';
import {
  callClean,
  type Fault,
  HEARING_LESSON,
  hostHearingPack,
  lessonOf,
  openWithDevices,
  type PlayedStroke,
  playLoop,
  SHORT_LESSON,
  soundOf,
  startOf,
  stopAfterRound,
  strike,
  willPlay,
  willStrike,
} from '../../../../internal/testing/hearing.ts';

const lesson = lessonOf(SHORT_LESSON);
const BPM = 160;
/** A bar of four at 160, in seconds. */
const LOOP_SECONDS = 1.5;
const LOOPS = { bpm: BPM, loopSeconds: LOOP_SECONDS };

const browser = await sharedBrowser();
const host = await hostHearingPack(SHORT_LESSON);
/** Rounds of two bars: what a microphone hears is judged by more strokes than what a kit sends. */
const twoBars = await hostHearingPack();

function played(
  exercise: number,
  fault: Fault = () => ({ lateMs: 4 }),
  of = lesson,
): readonly PlayedStroke[] {
  return playLoop(of, exercise, BPM, fault);
}

const play = (page: Page) => page.getByRole('button', { name: 'Play', exact: true }).click();
const after = (page: Page) => page.locator('[data-part="after-loop"]');
const ladder = (page: Page) => page.locator('[data-part="ladder"]');

async function listenToKit(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Use an electronic kit' }).click();
  await page.locator('[data-ear="on"]').waitFor();
}

async function checkTiming(page: Page): Promise<string> {
  await page.getByRole('button', { name: /Check the timing|Check again/ }).click();
  await page
    .getByRole('button', { name: /Start the check|Check again/ })
    .last()
    .click();
  const says = page.locator('[data-part="check-says"]', { hasText: 'there and back' });
  await says.waitFor();
  const text = (await says.textContent()) ?? '';
  await page.getByRole('button', { name: 'Done' }).click();
  return text;
}

/** Says by hand how long sound takes there and back, where its measurement is not what is tried. */
async function setTiming(page: Page, milliseconds: number): Promise<void> {
  await page.getByRole('button', { name: 'Check the timing' }).click();
  await page.getByLabel('Or by hand, in milliseconds').fill(String(milliseconds));
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByText('Kept for these devices.').waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
}

/** Waits until so many rounds were judged. @returns what was said of each */
async function rounds(page: Page, count: number): Promise<readonly string[]> {
  const all = page.locator('[data-part="rounds"] li');
  await expect.poll(() => all.count()).toBeGreaterThanOrEqual(count);
  return (await all.allTextContents()).slice(0, count);
}

it('[ST78] a good take by the microphone climbs the ladder, a bad one does not, and it is said why', async () => {
  const page = await openWithDevices(browser, `${twoBars.url}#1`, { loopback: true, delaySeconds: 0.04 });
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  await page.locator('[data-ear="on"]').waitFor();
  // definition: the way from loudspeaker to microphone that the test laid
  await setTiming(page, 40);
  await page.evaluate(() => window.deskOfTest.loopback?.gain.setValueAtTime(0, 0));
  const { next } = seededRandom('hands');
  // published: Hellmer & Madison 2015: professional drummers scatter by several ms
  const hands = () => 24 * (next() - next());
  const whole = lessonOf(HEARING_LESSON);
  const late = played(1, ({ voice }) => ({ lateMs: hands() + (voice === 'snare' ? 60 : 0) }), whole);
  const good = played(1, () => ({ lateMs: hands() }), whole);
  await willPlay(page, soundOf([late], 2 * LOOP_SECONDS), BPM);
  await stopAfterRound(page);
  await play(page);
  const [first] = await rounds(page, 1);
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  expect(first).not.toContain('clean');
  expect(await after(page).locator('[data-part="advice"]').textContent()).toContain('the snare');
  // the figures are one press away
  await after(page).getByText('The figures').click();
  await after(page).getByText('Left hand (snare)').first().waitFor();
  expect(await ladder(page).textContent()).toContain('0 of 3 clean loops at 160');
  await willPlay(page, soundOf([good, good, good], 2 * LOOP_SECONDS), BPM);
  await play(page);
  const said = await rounds(page, 4);
  expect(said.slice(1)).toEqual([1, 2, 3].map((n) => `Round ${n} at 160: clean`));
  // definition: three clean loops climb one step of 20
  await expect.poll(() => ladder(page).textContent()).toContain('Up to 180 from the next round.');
});

it('[ST79] a kit comes to the same verdicts, and its strokes are drawn at their heads', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await listenToKit(page);
  const without = played(1, ({ voice }) => (voice === 'hihat-foot' ? null : { lateMs: 4 }));
  await willStrike(page, [without], LOOPS);
  await stopAfterRound(page);
  await play(page);
  const [first] = await rounds(page, 1);
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  expect(first).not.toContain('clean');
  expect(await after(page).locator('[data-part="advice"]').textContent()).toBe(
    'Bring in the hi-hat foot: it stayed out.',
  );
  await willStrike(page, [played(1), played(1), played(1)], LOOPS);
  await play(page);
  expect(await rounds(page, 4)).toEqual([first, ...[1, 2, 3].map((n) => `Round ${n} at 160: clean`)]);
  await expect.poll(() => ladder(page).textContent()).toContain('Up to 180');
});

it('[ST77] [ST7900] draws early strokes left and late ones right of their heads, rings and pluses', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await listenToKit(page);
  const strokes = played(1, ({ voice }) => {
    if (voice === 'hihat-foot') return null;
    return { lateMs: voice === 'snare' ? 30 : voice === 'ride' ? -30 : 0 };
  });
  const [bass, other] = strokes.filter((each) => each.stroke.voice === 'bass');
  if (!bass || !other) throw new Error('no bass drum is written');
  const between = { ...bass, timeSeconds: bass.timeSeconds + 0.19 };
  // two for one place: the first is drawn there at once, and the nearer one once the bar is over
  const early = { ...other, timeSeconds: other.timeSeconds - 0.06 };
  await willStrike(page, [[...strokes, between, early]], LOOPS);
  await play(page);
  await page.locator('[data-mark="extra"]').first().waitFor({ state: 'attached' });
  await page.locator('[data-mark="missed"]').first().waitFor();
  const ways = await page.locator('[data-mark="heard"]').evaluateAll((all) =>
    all.map((mark) => {
      const [, from = '0', , to = '0'] =
        /M([-\d.]+) ([-\d.]+)H([-\d.]+)/.exec(mark.querySelector('path')?.getAttribute('d') ?? '') ?? [];
      return { offset: Number((mark as SVGElement).dataset['offset']), moved: Number(to) - Number(from) };
    }),
  );
  expect(ways.length).toBeGreaterThan(5);
  for (const { offset, moved } of ways.filter((each) => Math.abs(each.offset) > 10)) {
    expect(Math.sign(moved)).toBe(Math.sign(offset));
  }
  expect(ways.some(({ offset }) => offset > 15) && ways.some(({ offset }) => offset < -15)).toBe(true);
  // definition: the ride was 30 ms early, and of both strokes of the bass drum the report takes the one that was on time
  await expect
    .poll(() =>
      page
        .locator('[data-mark="heard"]')
        .evaluateAll((all) =>
          all.map((mark) => Number((mark as SVGElement).dataset['offset'])).filter((offset) => offset < -45),
        ),
    )
    .toEqual([]);
});

it('[ST75] goes on by itself after comfortable rounds, says so, and stays when told', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await listenToKit(page);
  await page.getByText('Go on by itself').click();
  await page.getByLabel('Clean rounds before the next exercise').selectOption('2');
  await willStrike(page, [played(1), played(1)], LOOPS);
  await play(page);
  await startOf(page, BPM);
  // What comes after the first count-in is the second exercise's.
  await willStrike(page, [played(2), played(2)], LOOPS);
  await page.getByText('Next: exercise 2.').waitFor();
  await page.waitForURL(/#2$/);
  await page.getByRole('button', { name: 'Stay here' }).click();
  await page.getByText('Comfortable. Staying, as you asked.').waitFor();
  expect(page.url()).toMatch(/#2$/);
});

it('[ST80] finds the way of the sound, and keeps it for the devices', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`, { loopback: true, delaySeconds: 0.02 });
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  await page.getByText('Not checked yet').waitFor();
  const short = Number.parseInt(await checkTiming(page), 10);
  await page.evaluate(() => window.deskOfTest.student?.delayTime.setValueAtTime(0.12, 0));
  const text = await checkTiming(page);
  // definition: the test's room became 100 ms longer
  expect(Math.abs(Number.parseInt(text, 10) - short - 100)).toBeLessThanOrEqual(2);
  expect(text).toMatch(/10 of 10 clicks heard/);
  await page.reload();
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  await page.getByText(`Sound takes ${Number.parseInt(text, 10)} ms there and back`).waitFor();
  await page.getByRole('button', { name: 'Check again' }).click();
  await page.getByLabel('Or by hand, in milliseconds').fill('33');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByText('Kept for these devices.').waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByText('Sound takes 33 ms there and back').waitFor();
});

it('[ST94] tells the recording from a student, and does not praise it', async () => {
  const page = await openWithDevices(browser, `${twoBars.url}#1`, { loopback: true, delaySeconds: 0.03 });
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  await page.locator('[data-ear="on"]').waitFor();
  // definition: the way from loudspeaker to microphone that the test laid
  await setTiming(page, 30);
  await play(page);
  expect(await rounds(page, 2)).toEqual([1, 2].map((n) => `Round ${n} at 160: not judged`));
  expect(await after(page).textContent()).toContain('loudspeaker');
  expect(await ladder(page).textContent()).toContain('0 of 3 clean loops at 160');
});

it('[ST80] finds how late a kit is by playing along', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await listenToKit(page);
  await page.getByRole('button', { name: 'Check the timing' }).click();
  await page.getByRole('button', { name: 'Start the check' }).click();
  const begun = await page.waitForFunction(
    () => (window.deskOfTest.begun.length >= 16 ? window.deskOfTest.begun.slice(0, 16) : null),
    undefined,
    { polling: 100 },
  );
  const clicks = ((await begun.jsonValue()) ?? []) as number[];
  const [first = 0] = clicks;
  const [snare] = played(1).filter(({ stroke }) => stroke.voice === 'snare');
  if (!snare) throw new Error('no snare is written');
  const hand = clicks.map((click) => ({ ...snare, timeSeconds: click - first + 0.035 }));
  await strike(page, hand, first);
  const says = page.locator('[data-part="check-says"]', { hasText: 'there and back' });
  await says.waitFor();
  const text = (await says.textContent()) ?? '';
  // definition: every stroke came 35 ms after its click
  expect(Math.abs(Number.parseInt(text, 10) - 35)).toBeLessThanOrEqual(3);
  expect(text).toContain('16 of 16 clicks heard');
});

it('[ST80] finds it too where a stream has to have a context of its own', async () => {
  const devices = { loopback: true, delaySeconds: 0.04, isStrict: true };
  const page = await openWithDevices(browser, `${host.url}#1`, devices);
  await page.getByRole('button', { name: 'Use the microphone' }).click();
  await page.locator('[data-ear="on"]').waitFor();
  const text = await checkTiming(page);
  expect(text).toMatch(/(10|9) of 10 clicks heard/);
  // definition: the room takes 40 ms, and no browser less than that
  expect(Number.parseInt(text, 10)).toBeGreaterThanOrEqual(40);
});

it('[ST74] marks what is missing where the student answers, and nothing where the recording plays', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await listenToKit(page);
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByText('Trade 4s').click();
  await page.getByRole('button', { name: 'Done' }).first().click();
  await page.locator('[data-part="form"]', { hasText: 'Trade' }).waitFor();
  await page.evaluate(() => {
    const first = () => {
      if (!document.querySelector('[data-mark="missed"]')) return;
      watch.disconnect();
      Object.assign(window, { firstMissedSeconds: window.deskOfTest.heardSeconds() });
    };
    const watch = new MutationObserver(first);
    watch.observe(document.body, { subtree: true, childList: true, attributes: true });
  });
  await play(page);
  const start = await startOf(page, BPM);
  const marks = page.locator('[data-mark="missed"]');
  await expect.poll(() => marks.count()).toBeGreaterThan(5);
  const firstSeconds = await page.evaluate(
    () => (window as unknown as { firstMissedSeconds: number }).firstMissedSeconds,
  );
  // definition: four bars of the recording at 160 take six seconds
  expect(firstSeconds).toBeGreaterThan(start + 6);
});

it('[ST81] says that there is none, whatever is missing, and everything else goes on', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`, { microphone: 'denied', kit: false });
  await page.getByText('the browser will ask whether this page may use it').waitFor();
  const refusal = page.locator('[data-part="refusal"]');
  const ask = async (button: string, said: string) => {
    await page.getByRole('button', { name: button }).click();
    await expect.poll(() => refusal.textContent()).toContain(said);
    expect(await refusal.textContent()).toContain('Everything else goes on without it.');
  };
  await ask('Use the microphone', 'was not allowed to use the microphone');
  await page.evaluate(() => {
    window.deskOfTest.microphone = 'missing';
  });
  await ask('Use the microphone', 'No microphone was found');
  await ask('Use an electronic kit', 'No kit was found');
  await play(page);
  await callClean(page);
  await expect.poll(() => ladder(page).textContent()).toContain('1 of 3 clean loops');
});

it('[ST95] hears without a network once the page has been there', async () => {
  const page = await openWithDevices(browser, host.url, {}, { serviceWorkers: 'allow', kit: 'own' });
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.context().setOffline(true);
  await page.goto(`${host.url}#1`);
  await page.reload();
  await listenToKit(page);
  await willStrike(page, [played(1)], LOOPS);
  await play(page);
  expect(await rounds(page, 1)).toEqual(['Round 1 at 160: clean']);
});

it('[ST82] judges the last round of an exercise when another one is already on the stand', async () => {
  const page = await openWithDevices(browser, `${host.url}#1`);
  await listenToKit(page);
  await page.getByText('Keep every take').click();
  await willStrike(page, [played(1)], LOOPS);
  await play(page);
  // As soon as its last bar line has been heard, and so before its report can come.
  await page.evaluate(
    (end) =>
      new Promise<void>((resolve) => {
        const look = () => {
          if (window.deskOfTest.heardSeconds() < end) return setTimeout(look, 5);
          window.location.hash = '#2';
          return resolve();
        };
        look();
      }),
    (await startOf(page, BPM)) + LOOP_SECONDS + 0.01,
  );
  await page.getByText('The take is kept.').waitFor();
  await expect.poll(() => page.locator('[data-part="take-in-hand"]').textContent()).toContain('Exercise 1');
  expect(await page.locator('[data-part="take-in-hand"]').textContent()).toContain('1 of 1 round clean');
});
