import { createServer } from 'node:http';
import { exerciseKey, parseLesson } from '@shedbook/core';
import type { MadeLink, StoredLesson, StoredStudent } from '@shedbook/routes';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openWindow, sharedBrowser } from '../../../../internal/testing/browser.ts';
import { comingAndGoing } from '../../../../internal/testing/coming-and-going.ts';

const LESSONS = {
  waltz: 'title: Jazz waltz\nmeter: 3/4\ntempo: 200\nfeel: triplet\nexercises:\n  - x.. ..x x.x\n',
  swing: 'title: First swing\ntempo: 240\nfeel: triplet\nexercises:\n  - x.. ..x x.x ...\n',
} as const;

type Name = keyof typeof LESSONS;

type Desk = ReturnType<typeof comingAndGoing>;

/** Sets the only exercise of each lesson. */
async function setFor(desk: Desk, id: string, lessons: readonly StoredLesson[]): Promise<void> {
  const { name, revision } = await desk.ask<StoredStudent>('GET', `/api/students/${id}`);
  const assignments = lessons.map(({ id: lesson, text }) => {
    const exercise = parseLesson(text, 'lesson').lesson?.exercises[0];
    return { lesson, exercise: exercise ? exerciseKey(exercise) : '', pinned: false, note: null };
  });
  await desk.ask('PUT', `/api/students/${id}`, { name, assignments, revision });
}

async function studentWith(desk: Desk, name: string, lessons: readonly StoredLesson[]) {
  const { id } = await desk.ask<StoredStudent>('POST', '/api/students', { name });
  await setFor(desk, id, lessons);
  const made = await desk.ask<MadeLink>('POST', `/api/students/${id}/links?language=en`);
  return { id, link: made.link, address: made.address };
}

/** Opens a link while there is a network, and waits until so many lessons and the link itself are kept. */
async function visit(page: Page, address: string, lessons: number): Promise<void> {
  await page.goto(address);
  const kept = () =>
    page.evaluate(async (link) => {
      const registrations = await navigator.serviceWorker.getRegistrations();
      const active = registrations.filter((each) => each.scope.startsWith(link) && each.active);
      return [active.length, (await caches.match(link)) !== undefined];
    }, address);
  await expect.poll(kept, { timeout: 60_000 }).toEqual([lessons + 1, true]);
}

async function shows(page: Page, address: string, heading: string): Promise<void> {
  await page.goto(address);
  await page.getByRole('heading', { level: 1, name: heading }).waitFor();
}

/** A host that answers everything with a page of its own, as well as can be. */
async function answerAll(port: number): Promise<() => Promise<void>> {
  const host = createServer((_, response) => {
    response.writeHead(200, { 'content-type': 'text/html' }).end('<h1>Back soon</h1>');
  });
  await new Promise<void>((resolve) => {
    host.listen(port, '127.0.0.1', resolve);
  });
  return () =>
    new Promise((resolve) => {
      host.closeAllConnections();
      host.close(() => resolve());
    });
}

it('[ST6500] [ST6501] opens by the link itself without a network and past a host that lies, each student’s own, and nothing once it was taken back', async () => {
  const desk = comingAndGoing();
  await desk.start();
  const made = (name: Name) => desk.ask<StoredLesson>('POST', '/api/lessons', { text: LESSONS[name] });
  const [waltz, swing] = [await made('waltz'), await made('swing')];
  const kaito = await studentWith(desk, 'Kaito', [waltz, swing]);
  const bram = await studentWith(desk, 'Bram', [swing]);
  const page = await openWindow(await sharedBrowser(), 'about:blank');
  await visit(page, kaito.address, 2);
  await visit(page, bram.address, 1);

  await desk.stop();
  await shows(page, kaito.address, 'Jazz waltz');
  await page.getByText('Kaito plays').waitFor();
  await shows(page, bram.address, 'First swing');
  await page.getByText('Bram plays').waitFor();

  const wellAgain = await answerAll(desk.port());
  await shows(page, kaito.address, 'Jazz waltz');
  await wellAgain();

  await desk.start();
  await setFor(desk, kaito.id, [swing]);
  await shows(page, kaito.address, 'First swing');
  await desk.stop();
  // definition: what the desk said last is what the link leads to
  await shows(page, `${kaito.address}?from=message`, 'First swing');

  await desk.start();
  await desk.ask('DELETE', `/api/links/${kaito.link.id}`);
  expect((await page.goto(kaito.address))?.status()).toBe(404);
  await page.getByText('This private link opens nothing any more').waitFor();
  await desk.stop();
  await shows(page, bram.address, 'First swing');
  await expect(page.goto(kaito.address)).rejects.toThrow('ERR_CONNECTION_REFUSED');
});
