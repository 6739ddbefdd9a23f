/**
 * What a device does with sound, as facts: whether it plays, how late, by which clock, what its microphone does to what
 * it hears, and whether it keeps anything.
 *
 * Conventions: milliseconds of the page's clock; null where the browser does not say.
 * Sources: Web Audio API; Media Capture and Streams, `getSettings`; WHATWG Storage.
 */
import { type DoneToTrack, doneToTrack, UNTOUCHED } from '../device/done-to-track.ts';
import { inTime } from '../device/in-time.ts';
import { stampOf, toldLatency } from '../sound/output-clock.ts';
import { type Player, STROKES_EVENT, type StrokesEvent } from '../sound/player.ts';
import type { Lack, Way } from '../sound/start-ways.ts';
import { DRUMS, DRUMS_BPM } from './drums.data.ts';

/** How it sounds. */
export interface SoundFacts {
  readonly way: Way;
  /** What was lacking where nothing sounded. */
  readonly lack: Lack | null;
  /** From the press until the first stroke left the loudspeaker. */
  readonly firstMs: number | null;
  /** Strokes that were given out in two seconds. */
  readonly strokes: number;
  readonly rateHz: number;
  readonly baseMs: number | null;
  readonly outputMs: number | null;
  /** What the clock of the sound, and that of the loudspeaker, show of one second of the page's clock. */
  readonly audioMs: number | null;
  readonly stampMs: number | null;
}

/** What the track of a microphone says of itself. */
export interface MicrophoneFacts extends DoneToTrack {
  readonly refusal: 'refused' | 'missing' | null;
  readonly name: string;
  /** Decibels of full scale. */
  readonly levelDb: number | null;
}

/** What is kept, and by what. */
export interface StorageFacts {
  readonly keeps: boolean;
  readonly lasting: boolean | null;
  readonly usedBytes: number | null;
  readonly leftBytes: number | null;
  readonly offline: boolean;
  readonly midi: boolean;
}

const SECOND_MS = 1000;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

const SETTINGS = { bpm: DRUMS_BPM, click: false, mute: [], trimDb: {} } as const;

/** What the clocks show of a second. */
async function compareClocks(context: AudioContext) {
  const [pageMs, audio, stamp] = [performance.now(), context.currentTime, stampOf(context)];
  await pause(SECOND_MS);
  const share = SECOND_MS / (performance.now() - pageMs);
  const later = stampOf(context);
  const stampMs = stamp === null || later === null ? null : (later - stamp) * SECOND_MS * share;
  return { audioMs: (context.currentTime - audio) * SECOND_MS * share, stampMs };
}

const toMs = (seconds: number | undefined) => (seconds === undefined ? null : seconds * 1000);

/** Plays two seconds of drums. Call it from a press of a key or a finger. */
export async function trySound(player: Player): Promise<SoundFacts> {
  const pressedMs = performance.now();
  let strokes = 0;
  let firstMs: number | null = null;
  const hear = (event: Event) => {
    const { detail } = event as CustomEvent<StrokesEvent>;
    const ahead = ((detail.strokes[0]?.sample ?? 0) - detail.heardSample()) / detail.sampleRate;
    firstMs ??= performance.now() + ahead * 1000 - pressedMs;
    strokes += detail.strokes.length;
  };
  window.addEventListener(STROKES_EVENT, hear);
  await player.play(DRUMS, SETTINGS, 'right-handed');
  const plays = player.status() === 'playing';
  const context = player.context();
  const clocks = plays ? await compareClocks(context) : { audioMs: null, stampMs: null };
  if (plays) await pause(SECOND_MS);
  window.removeEventListener(STROKES_EVENT, hear);
  const facts = {
    ...{ way: player.way(), lack: plays ? null : player.lack(), firstMs, strokes },
    ...{ rateHz: context.sampleRate, baseMs: toMs(context.baseLatency), ...clocks },
    outputMs: toMs(toldLatency(context)),
  };
  player.stop();
  return facts;
}

/** Loudest sample of a second, in dB of full scale; null where none came. */
async function loudest(context: AudioContext, stream: MediaStream): Promise<number | null> {
  const source = new MediaStreamAudioSourceNode(context, { mediaStream: stream });
  const ear = new AnalyserNode(context, { fftSize: 2048 });
  source.connect(ear);
  const samples = new Float32Array(ear.fftSize);
  let peak = 0;
  for (let look = 0; look < 20; look += 1) {
    await pause(SECOND_MS / 20);
    ear.getFloatTimeDomainData(samples);
    peak = Math.max(peak, ...samples.map(Math.abs));
  }
  source.disconnect();
  return peak === 0 ? null : 20 * Math.log10(peak);
}

const NOTHING = { name: '', echo: null, noise: null, gain: null, levelDb: null };

/** Opens the microphone for a second. */
export async function tryMicrophone(): Promise<MicrophoneFacts> {
  if (!navigator.mediaDevices?.getUserMedia) return { ...NOTHING, refusal: 'missing' };
  const stream = await navigator.mediaDevices.getUserMedia({ audio: UNTOUCHED }).catch(() => null);
  const track = stream?.getAudioTracks()[0];
  if (!stream || !track) return { ...NOTHING, refusal: 'refused' };
  const done = doneToTrack(track);
  const context = new AudioContext();
  const levelDb = await inTime(
    context.resume().then(() => loudest(context, stream)),
    4000,
  ).catch(() => null);
  for (const each of stream.getTracks()) each.stop();
  void context.close();
  return { refusal: null, name: track.label, ...done, levelDb };
}

/** Whether a database can be opened. */
function opens(): Promise<boolean> {
  return new Promise((resolve) => {
    try {
      const asked = indexedDB.open('shedbook sound check');
      asked.onsuccess = () => {
        asked.result.close();
        indexedDB.deleteDatabase('shedbook sound check');
        resolve(true);
      };
      asked.onerror = () => resolve(false);
    } catch {
      resolve(false);
    }
  });
}

/** Looks at what is kept. */
export async function lookAtStorage(): Promise<StorageFacts> {
  const { storage } = navigator;
  const { usage, quota } = (await storage?.estimate?.().catch(() => null)) ?? {};
  const lasting = (await storage?.persisted?.().catch(() => null)) ?? null;
  const keeps = await inTime(opens(), 4000).catch(() => false);
  const room = usage === undefined || quota === undefined ? null : quota - usage;
  const midi = 'requestMIDIAccess' in navigator;
  return {
    ...{ keeps, lasting, usedBytes: usage ?? null, leftBytes: room },
    ...{ offline: 'serviceWorker' in navigator, midi },
  };
}
