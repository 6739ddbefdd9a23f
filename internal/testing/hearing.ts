/**
 * For browser tests of hearing: a microphone and a kit whose sound and notes come from the test, exactly on the clock
 * of the page's own audio context.
 *
 * Conventions: seconds of the audio context; takes as mono samples at 44 100 Hz.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import {
  Bpm,
  type Form,
  Hertz,
  type Lesson,
  levelDbToVelocity,
  parseLesson,
  perform,
  Seconds,
  type Stroke,
  VOICE_FACTS,
} from '@shedbook/core';
import { loadEngravingTools, readPracticePage } from '@shedbook/host';
import { makePack, type PackRequest } from '@shedbook/pack';
import { render } from '@shedbook/sound';
import type { Browser, Page } from 'playwright-core';
import { afterAll, onTestFinished } from 'vitest';
import { PATIENCE_MS } from './browser.ts';
import { drawFewFrames } from './few-frames.ts';
import { keptKit } from './kept-kit.mjs';
import { newWindow, type WindowOptions } from './kit-at-hand.ts';
import { hostFolder, type StaticHost, temporaryFolder } from './practice.ts';

/** A lesson whose loops are short: two bars at 160 take three seconds. */
export const HEARING_LESSON = `title: Hearing
by: Oda Lindqvist-Reyes
tempo: {start: 160, goal: 200, step: 20}
feel: triplet
groove:
  ride: x x.x x x.x
  hihat-foot: . x . x
  bass: x x x x
balance: {snare: 0, bass: -6}
forms:
  loop:
    countIn: 1
    sections:
      - pattern: 2
exercises:
  - x.. ..x x.x ...
  - ..x ..x x.. x..
  - x.. x.. ... ..x
`;

/** The same with rounds of one bar, a second and a half, for tests that wait while rounds go by. */
export const SHORT_LESSON = HEARING_LESSON.replace('- pattern: 2', '- pattern: 1');

/** The lesson, read. */
export function lessonOf(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'test');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

/** A form of a lesson, without its count-in. */
export function formOnce(lesson: Lesson, name = 'loop'): Form {
  const form = lesson.forms.find((each) => each.name === name);
  if (!form) throw new Error(`no form ${name}`);
  return { ...form, repeat: 1, countInBars: 0 };
}

/** What a pack has besides a lesson. */
export type AlsoInPack = Partial<Pick<PackRequest, 'assignments' | 'demonstrations' | 'films'>>;

async function packOf(text: string, id: string, also: AlsoInPack): ReturnType<typeof makePack> {
  const app = await readPracticePage(process.env['SHEDBOOK_PRACTICE']);
  const tools = await loadEngravingTools();
  const lesson = lessonOf(text);
  return makePack({ id, lesson, text, app, ...tools, language: 'en', audio: false, ...also });
}

/** Packs that were made, by what they are made of: several files of tests want the same. */
const packs = new Map<string, ReturnType<typeof makePack>>();

/** Makes a pack out of the built practice room (`SHEDBOOK_PRACTICE` names another one) into a folder. */
export async function makeHearingPack(
  text: string,
  folder: string,
  id = 'hearing',
  also: AlsoInPack = {},
): Promise<string> {
  const key = JSON.stringify([id, text, also]);
  const made = packs.get(key) ?? packOf(text, id, also);
  packs.set(key, made);
  for (const { path, content } of await made) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
  return folder;
}

/** A host of the pack of a lesson for the tests of a file; it stops and its folder goes after the last. */
export async function hostHearingPack(text = HEARING_LESSON): Promise<StaticHost> {
  const folder = temporaryFolder();
  const host = await hostFolder(await makeHearingPack(text, folder.path));
  afterAll(async () => {
    await host.stop();
    folder.remove();
  });
  return host;
}

/** A stroke as a student plays it. */
export interface PlayedStroke {
  readonly stroke: Stroke;
  /** From the start of the loop. */
  readonly timeSeconds: number;
}

/** What goes wrong: null is a stroke that is left out. */
export type Fault = (stroke: Stroke) => { readonly lateMs: number } | null;

/** A loop as it is played, with its faults. */
export function playLoop(
  lesson: Lesson,
  exercise: number,
  bpm: number,
  fault: Fault,
): readonly PlayedStroke[] {
  const { strokes } = perform(lesson, { exercise, form: formOnce(lesson), bpm: Bpm(bpm) });
  return strokes.flatMap((stroke) => {
    const came = fault(stroke);
    return came ? [{ stroke, timeSeconds: Seconds(stroke.timeSeconds + came.lateMs / 1000) }] : [];
  });
}

const RATE = Hertz(44_100);
const KIT = keptKit({ sampleRateHz: RATE, seed: 'a student' });

/** The sound of several loops, one after the other, as a microphone would take it: cymbals ring on at the end. */
export function soundOf(loops: readonly (readonly PlayedStroke[])[], loopSeconds: number): Float32Array {
  const lead = 0.2;
  const strokes = loops.flatMap((loop, index) =>
    loop.map(({ stroke, timeSeconds }) => ({
      ...stroke,
      timeSeconds: Seconds(lead + index * loopSeconds + timeSeconds),
    })),
  );
  const durationSeconds = Seconds(lead + loops.length * loopSeconds);
  const { left, right } = render({ strokes, durationSeconds }, { kit: KIT, setUp: 'right-handed' });
  return left.map((sample, i) => 0.5 * (sample + (right[i] as number)));
}

/** Seconds of a sound of {@link soundOf} before its first bar line. */
export const LEAD_SECONDS = 0.2;

/** A note of a kit. */
interface KitNote {
  /** When it is struck, in seconds of the audio context. */
  readonly seconds: number;
  /** The bytes of the MIDI message. */
  readonly data: readonly number[];
}

/** What the page keeps for the test. */
interface Desk {
  context: AudioContext | null;
  /** When the count-in of what plays began, until somebody has asked; or null. */
  startSeconds: number | null;
  /** What is done when the next count-in begins, told when that is. */
  plans: ((countInSeconds: number) => void)[];
  /** When the second round of what plays began, or null. */
  secondRoundSeconds: number | null;
  /** Sends notes at their moments; each says when it was struck, as a kit's do. */
  send: (notes: readonly KitNote[]) => void;
  /** The moment that is heard now, in seconds of the audio context, as the page says. */
  heardSeconds: () => number;
  /** Whether there is a microphone, and may be used; it can change while the page is open. */
  microphone: Devices['microphone'];
  loopback: GainNode | null;
  student: DelayNode | null;
  port: { name: string; onmidimessage: ((event: unknown) => void) | null };
  drawn: number[];
  /** Takes the microphone away, as a cable that is pulled does. */
  unplug: () => void;
  /** When sounds of the page itself were told to begin: the clicks of the timing check. */
  begun: number[];
}

declare global {
  interface Window {
    deskOfTest: Desk;
  }
}

/** How the test's devices are. */
export interface Devices {
  readonly microphone: 'there' | 'denied' | 'missing';
  /** How long sound takes from loudspeaker to microphone, in seconds. */
  readonly delaySeconds: number;
  /** Whether the microphone hears the loudspeaker. */
  readonly loopback: boolean;
  /** Whether a kit is plugged in; `own` leaves the browser's own MIDI as it is. */
  readonly kit: boolean | 'own';
  /** Whether the browser takes a stream only in a context that has its rate, as some do. */
  readonly isStrict: boolean;
}

/** Runs in the page before anything of the practice room does. */
export function layDesk(devices: Devices): void {
  let destination: MediaStreamAudioDestinationNode | null = null;
  const desk: Desk = {
    context: null,
    startSeconds: null,
    plans: [],
    heardSeconds: () => 0,
    secondRoundSeconds: null,
    send: (notes) => {
      const clocks = () => {
        const { contextTime = 0, performanceTime = 0 } = desk.context?.getOutputTimestamp() ?? {};
        return (seconds: number) => performanceTime + (seconds - contextTime) * 1000;
      };
      for (const { seconds, data } of notes) {
        const strike = () =>
          desk.port.onmidimessage?.({ data: new Uint8Array(data), timeStamp: clocks()(seconds) });
        setTimeout(strike, clocks()(seconds) - performance.now());
      }
    },
    microphone: devices.microphone,
    loopback: null,
    student: null,
    port: { name: 'Kit of the test', onmidimessage: null },
    drawn: [],
    begun: [],
    unplug: () => {
      const [track] = destination?.stream.getAudioTracks() ?? [];
      track?.stop();
      desk.student?.disconnect();
      // A track that a page stops says nothing; one whose device went away does.
      track?.dispatchEvent(new Event('ended'));
    },
  };
  window.deskOfTest = desk;
  const Original = window.AudioContext;
  window.AudioContext = class extends Original {
    constructor(options?: AudioContextOptions) {
      super(options);
      if (desk.context) return;
      desk.context = this;
      desk.student = new DelayNode(this, { delayTime: devices.delaySeconds, maxDelayTime: 1 });
      desk.loopback = new GainNode(this, { gain: devices.loopback ? 0.5 : 0 });
      destination = new MediaStreamAudioDestinationNode(this, { channelCount: 1 });
      desk.loopback.connect(desk.student).connect(destination);
    }
  };
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (when = 0, ...more: number[]) {
    desk.begun.push(when);
    start.call(this, when, ...more);
  };
  // The way through a stream of the browser drops and repeats samples when the machine is busy; what the microphone
  // hears goes straight on, sample for sample, except where a stream is what is tried.
  const Source = window.MediaStreamAudioSourceNode;
  class Straight extends GainNode {
    constructor(context: BaseAudioContext) {
      super(context);
      desk.student?.connect(this);
    }
  }
  class Strict extends Source {
    constructor(context: AudioContext, options: MediaStreamAudioSourceOptions) {
      if (context === desk.context) throw new DOMException('rate', 'NotSupportedError');
      super(context, options);
    }
  }
  window.MediaStreamAudioSourceNode = (devices.isStrict ? Strict : Straight) as never;
  const connect = AudioNode.prototype.connect as (...args: unknown[]) => AudioNode;
  AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
    if (desk.context && args[0] === desk.context.destination && desk.loopback)
      connect.call(this, desk.loopback);
    return connect.apply(this, args);
  } as typeof AudioNode.prototype.connect;
  navigator.mediaDevices.getUserMedia = async () => {
    if (desk.microphone === 'denied') throw new DOMException('no', 'NotAllowedError');
    if (desk.microphone === 'missing' || !destination) throw new DOMException('none', 'NotFoundError');
    return destination.stream;
  };
  if (devices.kit !== 'own') {
    navigator.requestMIDIAccess = (async () => ({
      inputs: new Map(devices.kit ? [['1', desk.port]] : []),
    })) as never;
  }
  window.addEventListener('shedbook:strokes', (event) => {
    const { strokes, sampleRate, heardSample } = (event as CustomEvent).detail;
    desk.heardSeconds = () => heardSample() / sampleRate;
    for (const { sample, stroke, pass } of strokes) {
      if (pass === 1) desk.secondRoundSeconds ??= sample / sampleRate;
      if (stroke.role !== 'count-in' || stroke.written.beat !== 1) continue;
      desk.startSeconds = sample / sampleRate;
      desk.secondRoundSeconds = null;
      for (const plan of desk.plans.splice(0)) plan(sample / sampleRate);
    }
  });
  window.addEventListener('shedbook:heard', (event) => {
    desk.drawn.push((event as CustomEvent).detail.afterMs);
  });
}

/** A window with the test's devices. */
export async function openWithDevices(
  browser: Browser,
  url: string,
  devices: Partial<Devices> = {},
  options: WindowOptions = {},
): Promise<Page> {
  const context = await newWindow(browser, {
    serviceWorkers: 'block',
    viewport: { width: 1100, height: 900 },
    // What the microphone hears of the loudspeaker is to sound as it does.
    ...(devices.loopback ? { kit: 'whole' } : {}),
    ...options,
  });
  onTestFinished(() => context.close());
  await drawFewFrames(context);
  await context.addInitScript(layDesk, {
    microphone: 'there' as const,
    delaySeconds: 0.03,
    loopback: false,
    kit: true,
    isStrict: false,
    ...devices,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(url);
  return page;
}

/** Waits until the count-in has begun. @returns when the first bar after it begins */
export async function startOf(page: Page, bpm: number): Promise<number> {
  const handle = await page.waitForFunction(() => window.deskOfTest.startSeconds, undefined, { polling: 20 });
  const countIn = (await handle.jsonValue()) as number;
  await page.evaluate(() => {
    window.deskOfTest.startSeconds = null;
  });
  return countIn + countInSeconds(bpm);
}

/** Calls the first round of what plays clean, once it has gone by. */
export async function callClean(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const { heardSeconds, secondRoundSeconds } = window.deskOfTest;
      return secondRoundSeconds !== null && heardSeconds() > secondRoundSeconds + 0.1;
    },
    undefined,
    { polling: 50 },
  );
  await page.getByRole('button', { name: 'That was clean' }).click();
}

/** Has playing stopped as soon as a round was judged: what is said of it then stands. */
export async function stopAfterRound(page: Page): Promise<void> {
  await page.evaluate(() => {
    const watch = new MutationObserver(() => {
      if (!document.querySelector('[data-part="rounds"] li')) return;
      watch.disconnect();
      document.querySelector<HTMLElement>('[data-part="play"]')?.click();
    });
    watch.observe(document.body, { subtree: true, childList: true });
  });
}

/** One bar of four quarters. */
const countInSeconds = (bpm: number) => (4 * 60) / bpm;

/** Lets the microphone hear a sound of {@link soundOf} in time with what plays next; to be said before it begins. */
export async function willPlay(page: Page, samples: Float32Array, bpm: number): Promise<void> {
  await page.evaluate(planSound, soundPlan(samples, bpm));
}

/** A sound as it goes to a page, and when it begins. */
export interface SoundPlan {
  /** Samples, 32-bit floats, in base64. */
  readonly bytes: string;
  /** From the beginning of the count-in, in seconds. */
  readonly afterSeconds: number;
}

/** A sound of {@link soundOf} in time with what plays next. */
export function soundPlan(samples: Float32Array, bpm: number): SoundPlan {
  const bytes = Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength).toString('base64');
  return { bytes, afterSeconds: countInSeconds(bpm) - LEAD_SECONDS };
}

/** Runs in the page: the microphone hears a sound when the next count-in has begun. */
export function planSound({ bytes, afterSeconds }: SoundPlan): void {
  const raw = Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0));
  const data = new Float32Array(raw.buffer);
  const buffer = new AudioBuffer({ length: data.length, sampleRate: 44_100 });
  buffer.copyToChannel(data, 0);
  window.deskOfTest.plans.push((countIn) => {
    const { context, student } = window.deskOfTest;
    if (!context || !student) throw new Error('nothing plays');
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(student);
    source.start(countIn + afterSeconds);
  });
}

/** Strokes as a kit sends them, counted from a moment on. */
function notesOf(strokes: readonly PlayedStroke[], fromSeconds: number): readonly KitNote[] {
  return strokes.flatMap(({ stroke, timeSeconds }) => {
    if (stroke.voice === 'click') return [];
    const velocity = levelDbToVelocity(stroke.levelDb);
    return [{ seconds: fromSeconds + timeSeconds, data: [0x99, VOICE_FACTS[stroke.voice].gmKey, velocity] }];
  });
}

/** Lets the kit send strokes, counted from a moment on. */
export async function strike(
  page: Page,
  strokes: readonly PlayedStroke[],
  fromSeconds: number,
): Promise<void> {
  await page.evaluate((notes) => window.deskOfTest.send(notes), notesOf(strokes, fromSeconds));
}

/** Lets the kit send loops one after the other, in time with what plays next; to be said before it begins. */
export async function willStrike(
  page: Page,
  loops: readonly (readonly PlayedStroke[])[],
  { bpm, loopSeconds }: { readonly bpm: number; readonly loopSeconds: number },
): Promise<void> {
  const notes = loops.flatMap((loop, index) => notesOf(loop, countInSeconds(bpm) + index * loopSeconds));
  await page.evaluate((notes) => {
    window.deskOfTest.plans.push((countIn) =>
      window.deskOfTest.send(notes.map((note) => ({ ...note, seconds: note.seconds + countIn }))),
    );
  }, notes);
}
