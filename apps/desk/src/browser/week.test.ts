import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { Bpm, defaultForm, exerciseKey, parseLesson, perform } from '@shedbook/core';
import { listenToNotes } from '@shedbook/listen';
import type { RosterPage, StoredLesson } from '@shedbook/routes';
import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { findings } from '../../../../internal/testing/axe.ts';
import { openWindow, sharedBrowser, startGuardedDesk } from '../../../../internal/testing/browser.ts';
import { notesSent } from '../../../../internal/testing/played-notes.ts';

const browser = await sharedBrowser();

const PASSPHRASE = 'brushes on a coated head';
const PHONE = { viewport: { width: 390, height: 844 } };

const LESSONS = [
  'title: Second choice\ntempo: 200\nfeel: triplet\nexercises:\n  - ..x ... ..x x..\n',
  'title: First of all\ntempo: 200\nfeel: triplet\nexercises:\n  - x.. ..x x.x ... | x.. ..x x.x ...\n',
];

async function signIn(page: Page): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Passphrase' });
  await field.fill('not this one');
  await page.keyboard.press('Enter');
  await page.getByText('That is not the passphrase.').waitFor();
  expect(await findings(page)).toEqual([]);
  await field.fill(PASSPHRASE);
  await page.keyboard.press('Enter');
  await page.getByText('Nobody on the roster yet.').waitFor();
}

/** Sets the only exercise of two lessons for the student, through the page that is signed in. */
async function setTwo(page: Page): Promise<void> {
  const post = (path: string, data: unknown) => page.request.post(new URL(path, page.url()).href, { data });
  const made: StoredLesson[] = [];
  for (const text of LESSONS) made.push(await (await post('/api/lessons', { text })).json());
  const roster = await page.request.get(new URL('/api/students', page.url()).href);
  const [student] = ((await roster.json()) as RosterPage).students;
  if (!student) throw new Error('nobody is on the roster');
  const assignments = made.toReversed().map(({ id, text }) => {
    const exercise = parseLesson(text, 'lesson').lesson?.exercises[0];
    return { lesson: id, exercise: exercise ? exerciseKey(exercise) : '', pinned: false, note: 'Lightly.' };
  });
  const { name, revision } = student;
  const saved = await page.request.put(new URL(`/api/students/${student.id}`, page.url()).href, {
    data: { name, assignments, revision },
  });
  expect(saved.status()).toBe(200);
  await page.reload();
}

/** Whether anything that was played is kept on the device, whoever it is of. */
async function isStretchKept(): Promise<boolean> {
  const found = (await indexedDB.databases()).filter(({ name }) => name?.startsWith('shedbook-practice '));
  for (const { name = '' } of found) {
    const opening = indexedDB.open(name);
    const database = await new Promise<IDBDatabase>((resolve) => {
      opening.onsuccess = () => resolve(opening.result);
    });
    const asked = database.transaction('notes').objectStore('notes').getAllKeys();
    const keys = await new Promise<readonly IDBValidKey[]>((resolve) => {
      asked.onsuccess = () => resolve(asked.result);
    });
    database.close();
    if (keys.some((key) => String(key).startsWith('entry '))) return true;
  }
  return false;
}

const SECONDS_OF_SOUND = 2;
const RATE = 16_000;

/** The head of a WAV file of one channel and 16 bits. Source: Microsoft and IBM, RIFF WAVE (1991). */
function wavHead(samples: number): number[] {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + samples * 2, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(RATE, 24);
  head.writeUInt32LE(RATE * 2, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(samples * 2, 40);
  return [...head];
}

/** A take of an exercise as the practice page keeps one: its exact strokes, heard, beside a recording of silence. */
function aTake(lesson: string, title: string, text: string) {
  const read = parseLesson(text, 'lesson').lesson;
  const exercise = read?.exercises[0];
  if (!read || !exercise) throw new Error('the lesson has problems');
  const form = { ...defaultForm(read), repeat: 1 };
  const bpm = Bpm(200);
  const { strokes, durationSeconds } = perform(read, { exercise: 1, form, bpm });
  const { report } = listenToNotes(notesSent(strokes), durationSeconds, {
    lesson: read,
    exercise: 1,
    form,
    bpm,
  });
  return {
    id: 'phone 1',
    startedAt: '2026-11-25T18:30:00+01:00',
    lesson,
    lessonTitle: title,
    exercise: exerciseKey(exercise),
    number: 1,
    form: form.name,
    layers: read.layers.length,
    kind: 'audio',
    durationSeconds,
    latencySeconds: 0,
    loops: [{ startSeconds: 0, endSeconds: durationSeconds, bpm }],
    verdicts: [{ bpm, verdict: 'clean' }],
    report,
    audioBytes: SECONDS_OF_SOUND * RATE * 2 + 44,
  };
}

/** Keeps a take on the device of whoever practises there. */
async function keepTake({ take, header, bytes }: { take: object; header: number[]; bytes: number }) {
  const [{ name = '' } = {}] = (await indexedDB.databases()).filter((each) =>
    each.name?.startsWith('shedbook-practice '),
  );
  const opening = indexedDB.open(name);
  const database = await new Promise<IDBDatabase>((resolve) => {
    opening.onsuccess = () => resolve(opening.result);
  });
  const audio = new Uint8Array(bytes);
  audio.set(header);
  const writing = database.transaction(['takes', 'audio'], 'readwrite');
  writing.objectStore('takes').put(take);
  writing.objectStore('audio').put({ id: 'phone 1', audio: audio.buffer, type: 'audio/wav' });
  await new Promise((resolve) => {
    writing.oncomplete = resolve;
  });
  database.close();
}

/** The page moves while the take is heard, and goes on moving while it changes to its model. */
async function hearBeside(teacher: Page): Promise<void> {
  const beside = teacher.locator('[data-part="beside"]');
  const ball = beside.locator('[data-on="exercise"] [data-ball]').first();
  await beside.locator('[data-mark="struck"]').first().waitFor();
  // definition: it was played as it is written, every time round
  expect(await beside.locator('[data-mark]:not([data-dx="0"])').count()).toBe(0);
  await beside.getByRole('slider', { name: 'How fast' }).fill('20');
  await beside.getByRole('button', { name: 'Play with the page' }).click();
  await beside.getByRole('button', { name: 'Stop' }).waitFor();
  await expect.poll(() => ball.evaluate((each: SVGElement) => each.style.visibility)).toBe('visible');
  await beside.getByText('The model', { exact: true }).click();
  expect(await beside.getAttribute('data-state')).toBe('playing');
  await beside.getByRole('button', { name: 'Stop' }).click();
  await beside.getByRole('button', { name: 'Play with the page' }).waitFor();
}

/** A tone in place of the microphone. */
function layTone(): void {
  navigator.mediaDevices.getUserMedia = async () => {
    const context = new AudioContext();
    const tone = new OscillatorNode(context);
    const out = context.createMediaStreamDestination();
    tone.connect(out);
    tone.start();
    setInterval(() => {
      document.documentElement.dataset['toneSeconds'] = String(context.currentTime);
    }, 50);
    return out.stream;
  };
}

function toneSeconds(page: Page): Promise<number> {
  return page.evaluate(() => Number(document.documentElement.dataset['toneSeconds'] ?? 0));
}

/** A note is spoken and sent about each of two bars. */
async function speakNotes(teacher: Page): Promise<void> {
  await teacher.evaluate(layTone);
  const note = teacher.locator('[data-part="spoken-note"]');
  await speakNote(teacher, 'Speak a note', 2);
  await speakNote(teacher, 'Speak another note', 1);
  const bars = () =>
    note.locator('[data-part="sent-note"]').evaluateAll((all) => all.map((each) => each.dataset['bar']));
  await expect.poll(bars).toEqual(['1', '2']);
  await note.getByRole('button', { name: 'Hear your note: About bar 1' }).click();
  await note.getByLabel('Your note: About bar 1').waitFor();
}

async function speakNote(teacher: Page, press: string, bar: number): Promise<void> {
  const note = teacher.locator('[data-part="spoken-note"]');
  const before = await toneSeconds(teacher);
  await note.getByRole('button', { name: press }).click();
  await note.getByText('Speak now; two minutes at most.').waitFor();
  await expect.poll(() => toneSeconds(teacher)).toBeGreaterThan(before + 1);
  await note.getByRole('button', { name: 'That is it' }).click();
  await note.getByLabel('What it is about').selectOption(`${bar}`);
  await note.getByRole('button', { name: 'Send the note' }).click();
  await note.getByText(`About bar ${bar}`).waitFor();
}

/** The student has the notes on the device, and hears each at its bar beside the words. */
async function hearNotes(student: Page): Promise<void> {
  const answers = student.locator('[data-part="answers"]');
  await answers.getByText('Takt 1: Let it breathe.').waitFor();
  const isKept = () =>
    student.evaluate(async () => {
      const cache = await caches.open('shedbook voice notes');
      const kept = await Promise.all((await cache.keys()).map((each) => cache.match(each)));
      return Promise.all(kept.map(async (each) => ((await each?.blob())?.size ?? 0) > 0));
    });
  await expect.poll(isKept).toEqual([true, true]);
  await student.getByRole('link', { name: 'First of all, Übung 1' }).first().click();
  await student.locator('[data-part="teacher-marks"]').getByText('Takt 1: Let it breathe.').waitFor();
  // the words at the first bar, and what was spoken there and at the second
  const pins = student.locator('[data-part="pin"]');
  await expect.poll(async () => [...new Set(await pins.allTextContents())]).toEqual(['1 2', '3']);
  await student.locator('[data-part="teacher-marks"] li').nth(1).getByText('Takt 1, gesprochen:').waitFor();
  const spoken = student.locator('[data-part="teacher-marks"] li').nth(2);
  await spoken.getByText('Takt 2, gesprochen:').waitFor();
  const seconds = () => spoken.locator('audio').evaluate((each: HTMLAudioElement) => each.duration);
  await spoken.locator('audio').evaluate((each: HTMLAudioElement) => each.load());
  await spoken.locator('audio').evaluate((each: HTMLAudioElement) => void each.play());
  await expect.poll(seconds).toBeGreaterThan(1);
  await student.goBack();
}

/** The student sends a take, the teacher hears it and answers, and the student reads it. */
async function sendAndAnswer(student: Page, teacher: Page): Promise<void> {
  const lesson = /\/practice\/[\w-]+\/([\w-]+)\//.exec(student.url())?.[1] ?? '';
  const take = aTake(lesson, 'First of all', LESSONS[1] ?? '');
  const header = wavHead(SECONDS_OF_SOUND * RATE);
  await student.evaluate(keepTake, { take, header, bytes: take.audioBytes });
  await student.reload();
  await student.getByText('Aufnahmen', { exact: true }).click();
  await student.getByRole('button', { name: 'An meine Lehrkraft schicken' }).click();
  await student.locator('[data-part="send-take"][data-state="sent"]').waitFor();
  // nobody loads the page again: the take shows as it comes
  const inbox = teacher.locator('[data-part="inbox"]');
  await inbox.getByText('wants to know what you think').waitFor();
  await inbox.getByRole('button', { name: /First of all, exercise 1: 1 of 1 round clean/ }).click();
  await teacher.getByRole('button', { name: 'Hear it' }).click();
  await teacher.locator('[data-part="heard-report"] li').first().waitFor();
  // the sound can be played here: its length is read out of the file
  const length = () => teacher.locator('audio').evaluate((element: HTMLAudioElement) => element.duration);
  await expect.poll(length).toBeCloseTo(SECONDS_OF_SOUND, 1);
  await hearBeside(teacher);
  expect(await findings(teacher)).toEqual([]);
  await teacher.locator('[data-part="sent-take"]').getByRole('button', { name: 'Pass at 200' }).click();
  await teacher.getByText('Passed. It stands').waitFor();
  await teacher.getByRole('textbox', { name: 'A line for the student' }).fill('Later, and lighter.');
  await teacher.getByRole('textbox', { name: 'Words on this bar' }).fill('Let it breathe.');
  await teacher.getByRole('button', { name: 'Pin it to the bar' }).click();
  await teacher.getByText('Bar 1: Let it breathe.').waitFor();
  await teacher.getByRole('button', { name: 'Send the line' }).click();
  await speakNotes(teacher);
  await inbox.waitFor({ state: 'detached' });
  await student.reload();
  await student.locator('[data-part="answers"]', { hasText: 'Later, and lighter.' }).waitFor();
  await hearNotes(student);
  await student.getByText('Was du gespielt hast', { exact: true }).click();
  await student.getByText('von deiner Lehrkraft bestanden bei 200 bpm').waitFor();
  expect(await findings(student)).toEqual([]);
}

/** One press each: a backup that this computer's tar opens, and a table with what Kaito played. */
async function keepItSafe(teacher: Page): Promise<void> {
  const download = async (name: string) => {
    const coming = teacher.waitForEvent('download');
    await teacher.getByRole('link', { name }).click();
    return (await coming).path();
  };
  // library: GNU tar
  const listed = spawnSync('tar', ['tf', await download('Back up everything')], { encoding: 'utf8' });
  expect(listed.stdout.trim().split('\n')).toEqual([
    'backup.json',
    expect.stringMatching(/^takes\/[0-9a-f]{64}\.zip$/),
    'lessons.sqlite',
    'SHA256SUMS',
  ]);
  const table = readFileSync(await download('Practice of Kaito as a table'), 'utf8');
  expect(table).toMatch(/^\uFEFFStudent,Day,Time,/);
  expect(table).toContain('the teacher,200,200,');
}

/** The minutes of each thing of a plan, in order. */
async function minutesIn(list: Locator): Promise<readonly number[]> {
  return (await list.allTextContents()).map((text) => Number.parseInt(text, 10));
}

/** What the page of a student keeps under a name. */
async function keptBy(student: Page, name: string): Promise<readonly Readonly<Record<string, unknown>>[]> {
  const all = await student.evaluate(() => Object.entries(localStorage));
  return all.flatMap(([key, value]) => (new RegExp(`\\b${name}\\b`).test(key) ? [JSON.parse(value)] : []));
}

/** Desk and page judge alike, plan alike and know which way round the drums stand. */
async function agreeOnHim(teacher: Page, student: Page): Promise<void> {
  expect(await keptBy(student, 'hearing')).toMatchObject([{ level: 'advanced' }]);
  expect(await keptBy(student, 'set-up')).toMatchObject([{ own: 'left-handed' }]);
  const planned = await minutesIn(teacher.getByRole('region', { name: 'The next 20 minutes' }).locator('li'));
  expect(planned.length).toBeGreaterThan(2);
  expect(await minutesIn(student.locator('[data-part="plan-item"] [data-part="minutes"]'))).toEqual(planned);
}

const SENDING = '[data-part="sending"]';

/** Runs in the page: forgets what went to the teacher, so that it goes again. */
async function forgetSent(): Promise<void> {
  for (const { name = '' } of await indexedDB.databases()) {
    const opening = indexedDB.open(name);
    const database = await new Promise<IDBDatabase>((resolve) => {
      opening.onsuccess = () => resolve(opening.result);
    });
    if (database.objectStoreNames.contains('notes')) {
      const writing = database.transaction('notes', 'readwrite');
      writing.objectStore('notes').delete('sent');
      await new Promise<void>((resolve) => {
        writing.oncomplete = () => resolve();
      });
    }
    database.close();
  }
}

/** A desk that takes no more for now: nothing goes, the page says so, and sends it later. */
async function refuseForNow(student: Page): Promise<void> {
  await student.route('**/log', (route) => route.fulfill({ status: 429 }));
  await student.evaluate(forgetSent);
  await student.reload();
  await student.locator(`${SENDING}[data-state="later"]`).waitFor();
  await student.unroute('**/log');
  await student.reload();
  await student.locator(`${SENDING}[data-state="sent"]`).waitFor();
}

it('[ST460] [ST2202] [ST2204] [ST3800] [ST5000] [ST5902] a week goes without a file in anybody’s hands: set, opened, played, sent, a take heard and answered, the link taken back', async () => {
  const teacher = await openWindow(
    browser,
    `${await startGuardedDesk(PASSPHRASE, 'http://lessons.example')}students`,
  );
  await signIn(teacher);
  await teacher.getByRole('button', { name: 'New student' }).click();
  await teacher.getByRole('textbox', { name: 'Name' }).fill('Kaito');
  await teacher.keyboard.press('Enter');
  await teacher.getByRole('heading', { name: 'Kaito' }).waitFor();
  await setTwo(teacher);
  await teacher.getByRole('radio', { name: 'Fluent' }).click();
  await teacher.getByRole('radio', { name: 'Left-handed' }).click();
  await teacher.getByText('Changed: Kaito.').waitFor();
  await teacher.getByRole('button', { name: 'Make a private link for Kaito' }).click();
  const told = await teacher.getByRole('textbox', { name: 'Address of the private link' }).inputValue();
  expect(told).toMatch(/^http:\/\/lessons\.example\/practice\/[\w-]{43}\/$/);
  expect(await findings(teacher)).toEqual([]);
  await teacher.getByRole('button', { name: 'Done' }).click();

  const address = new URL(new URL(told).pathname, teacher.url()).href;
  // a pupil whose phone speaks German, with a teacher whose desk speaks English
  const student = await openWindow(browser, address, { ...PHONE, locale: 'de-DE' });
  await student.getByText('Es spielt Kaito').waitFor();
  // the teacher's order, across lessons
  const items = student.locator('[data-part="plan-item"]', { hasText: 'Das ist eine Hausaufgabe. Lightly.' });
  await expect
    .poll(() => items.locator('a').allTextContents())
    .toEqual(['First of all, Übung 1', 'Second choice, Übung 1']);
  expect(await findings(student)).toEqual([]);
  await agreeOnHim(teacher, student);
  await items.first().getByRole('link').click();
  await student.getByRole('button', { name: 'Abspielen', exact: true }).click();
  await student.getByRole('button', { name: 'Anhalten', exact: true }).waitFor();
  await expect.poll(() => student.evaluate(isStretchKept), { timeout: 20_000 }).toBe(true);
  await student.getByRole('button', { name: 'Anhalten', exact: true }).click();
  await student.goto(address);
  await student.locator(`${SENDING}[data-state="sent"]`).waitFor();

  await refuseForNow(student);
  await teacher.reload();
  await teacher.getByText('played today', { exact: true }).waitFor();
  expect(await teacher.getByRole('radio', { name: 'Left-handed' }).isChecked()).toBe(true);
  await sendAndAnswer(student, teacher);
  await keepItSafe(teacher);
  await teacher.getByRole('button', { name: 'Take back link 1' }).click();
  await teacher.getByText('The link is taken back.').waitFor();
  expect((await student.request.get(address)).status()).toBe(404);
});
