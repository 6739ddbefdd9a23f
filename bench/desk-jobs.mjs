/**
 * Ten jobs of a teacher's week at the desk, each as one does it by hand, without the view of the text.
 *
 * Conventions: a job is given the page, the hands, the server's address and what was made for it; it ends when what it
 * was for is kept or lies on the disk, and throws where it cannot be done.
 */
import { parseLesson } from '@shedbook/core';

const button = (within, called) => within.getByRole('button', { name: called, exact: true });
const link = (page, called) => page.getByRole('link', { name: called, exact: true });

/** The lesson that is open, as the server keeps it. */
async function textOf(page, url) {
  const id = new URL(page.url()).pathname.split('/')[2];
  return (await (await fetch(new URL(`/api/lessons/${id}`, url))).json()).text;
}

/** Waits until what is asked of the server is as it should be. */
async function until(page, isRight) {
  const end = Date.now() + 60_000;
  while (!(await isRight())) {
    if (Date.now() > end) throw new Error('not kept');
    await page.waitForTimeout(100);
  }
}

const kept = (page, url, isRight) => until(page, async () => isRight(await textOf(page, url)));
const keptBars = (page, url, isRight) =>
  kept(page, url, (text) => {
    const { lesson } = parseLesson(text, 'kept');
    return lesson !== null && isRight(lesson.exercises.map(({ parts }) => parts[0]?.pattern.bars ?? []));
  });

/** Waits until a lesson lies open to be written in. */
const opened = (page) => page.locator('[data-part="line-editor"]').first().waitFor();

/** Everything is heard before it is handed out. */
async function hear(page, hands) {
  await hands.press(button(page, 'Play'));
  await hands.press(button(page, 'Stop'));
}

async function printed(page, hands, words) {
  await hands.press(link(page, words.print).last());
  await page.locator('[data-part="print-page"]').first().waitFor();
  const file = page.waitForEvent('download');
  await hands.press(link(page, words.download));
  await file;
}

async function openSwing(page, hands, called = 'Open First swing') {
  await hands.press(link(page, called));
  await opened(page);
}

async function startFrom(page, hands, groove) {
  await hands.press(button(page, 'Start from a groove'));
  await hands.pick(page.getByRole('menuitem', { name: groove, exact: true }));
  await opened(page);
}

/** The page is looked at for a while, and loads meanwhile what it will need. */
async function leftInPeace(page) {
  const needed = ['pop-over-opened', 'sound-form', 'groove-view'];
  await page.waitForFunction((names) => {
    const loaded = performance.getEntriesByType('resource').map((each) => each.name);
    return names.every((name) => loaded.some((each) => each.includes(name)));
  }, needed);
}

/** Where the tools lie along the lower edge, the rest of them is opened first. */
async function allTools(page, hands) {
  const more = button(page, 'More tools for this exercise');
  if (await more.isVisible()) await hands.press(more);
}

/** The jobs, by what they are called. */
export const JOBS = {
  'a first sheet': async ({ page, hands, url }) => {
    await hands.press(button(page, 'New lesson'));
    await opened(page);
    const before = await textOf(page, url);
    await hands.write('0 0 0', 'stroke');
    await kept(page, url, (text) => text !== before);
    await printed(page, hands, { print: 'Print', download: 'Download PDF' });
  },
  'the waltz': async ({ page, hands, url }) => {
    await startFrom(page, hands, 'Jazz waltz');
    await hands.write('0 0 0', 'stroke');
    await kept(page, url, (text) => text.includes('meter: 3/4'));
    await hear(page, hands);
  },
  'the blues': async ({ page, hands, url }) => {
    await startFrom(page, hands, 'Twelve-eight');
    await hands.write('0 0 0', 'stroke');
    await allTools(page, hands);
    for (let bar = 1; bar < 12; bar += 1) await hands.press(button(page, 'The same bar again'));
    await keptBars(page, url, ([bars]) => bars?.length === 12);
    await hear(page, hands);
  },
  'the funk with ghost notes': async ({ page, hands, url }) => {
    await startFrom(page, hands, 'Sixteenth-note funk');
    await hands.write('0 1 0', 'accent');
    await hands.write('0 1 3', 'ghost note');
    await keptBars(page, url, ([bars]) => bars?.[0]?.[1]?.text === 'X..g');
    await hear(page, hands);
  },
  'a form of one’s own': async ({ page, hands, url }) => {
    await openSwing(page, hands);
    await hands.press(button(page, 'Forms'));
    await hands.press(button(page, 'New form from this one'));
    await hands.press(button(page, 'Add a section to the form'));
    await hands.press(button(page, 'Bars of count-in: one more'));
    await hands.press(button(page, 'Done'));
    await kept(page, url, (text) => text.includes('My form'));
  },
  'half by hand, half composed': async ({ page, hands, url }) => {
    await startFrom(page, hands, 'Swing');
    await hands.write('0 0 0', 'stroke');
    await hands.press(link(page, 'Compose'));
    await hands.press(button(page, 'Propose a page'));
    await hands.press(button(page, 'Add after what is written'));
    await keptBars(page, url, (all) => all.length > 4 && all[0]?.[0]?.[0]?.text.startsWith('x'));
  },
  'a student’s recording': async ({ page, hands, url, recording }) => {
    await hands.press(button(page, 'Students'));
    await hands.press(button(page, 'New student'));
    await page.keyboard.type('Kaito');
    await hands.press(button(page, 'Done'));
    await hands.give(button(page, 'Add a recording or a practice log'), recording);
    const take = page.locator('[data-part="take-form"]');
    await hands.choose(take.getByRole('combobox', { name: 'Lesson' }), 'First swing');
    await hands.press(button(take, 'Listen'));
    await hands.press(button(take, 'Keep with Kaito'));
    const logs = async () => {
      const [student] = (await (await fetch(new URL('/api/students', url))).json()).students;
      return (await (await fetch(new URL(`/api/students/${student.id}/log`, url))).json()).rows;
    };
    await until(page, async () => (await logs()).length > 0);
  },
  'a print in German': async ({ page, hands }) => {
    await openSwing(page, hands, 'First swing öffnen');
    await printed(page, hands, { print: 'Drucken', download: 'PDF herunterladen' });
  },
  'three hundred lessons': async ({ page, hands, url }) => {
    await hands.type(page.getByRole('searchbox', { name: 'Search' }), '219');
    const found = page.locator('[data-part="lesson-card"]');
    await until(page, async () => (await found.count()) === 1);
    const title = await found.getByRole('heading').textContent();
    await hands.press(button(page, `More for ${title}`));
    await hands.pick(page.getByRole('menuitem', { name: 'Put in the archive' }));
    await until(page, async () => {
      const shelf = await (await fetch(new URL('/api/shelf', url))).json();
      return shelf.some((each) => each.title === title && each.isArchived);
    });
    await hands.press(button(page, 'Show all'));
    await hands.choose(page.getByRole('combobox', { name: 'Order' }), 'title');
    await hands.press(found.first().getByRole('link'));
    await opened(page);
  },
  'a lost connection': async ({ page, hands, url }) => {
    await openSwing(page, hands);
    const before = await textOf(page, url);
    await leftInPeace(page);
    await page.context().setOffline(true);
    await hands.write('0 0 0', 'stroke');
    await hands.press(button(page, 'Add exercise'));
    await hands.press(button(page, 'More sound settings'));
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await hands.press(link(page, 'Groove'));
    await page.getByText('All limbs together').waitFor();
    await page.context().setOffline(false);
    await kept(page, url, (text) => text !== before);
  },
};
