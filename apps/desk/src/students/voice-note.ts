/** Speaking a note: by the microphone, as an MP3 file. */
import { Hertz } from '@shedbook/core';
import { askWorker } from '@shedbook/stand';
import { readPlayed } from '../dictation/sound-file.ts';
import VoiceWorker from './voice.worker.ts?worker';
import type { SpokenOrder } from './voice-messages.ts';

/** Seconds that a note lasts at most; then it ends by itself. */
export const LONGEST_NOTE_SECONDS = 120;

/** A note that is being spoken. */
export interface Speaking {
  /** Ends it; it need not be called. */
  readonly stop: () => void;
  /** The note, when it has ended; null where nothing of it can be read. */
  readonly note: Promise<Blob | null>;
}

async function encode(order: SpokenOrder): Promise<Blob> {
  const data = await askWorker<Uint8Array<ArrayBuffer>>(new VoiceWorker(), order);
  return new Blob([data], { type: 'audio/mpeg' });
}

/** Begins to listen; the microphone is closed when the note ends. @throws DOMException where it is not there or not allowed */
export async function speak(): Promise<Speaking> {
  const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
  const recorder = new MediaRecorder(stream);
  const pieces: Blob[] = [];
  recorder.ondataavailable = ({ data }) => pieces.push(data);
  const ended = new Promise((resolve) => {
    recorder.onstop = resolve;
  });
  const stop = () => {
    if (recorder.state !== 'inactive') recorder.stop();
  };
  recorder.start();
  const timer = setTimeout(stop, LONGEST_NOTE_SECONDS * 1000);
  const note = async () => {
    await ended;
    clearTimeout(timer);
    for (const track of stream.getTracks()) track.stop();
    const played = await readPlayed(new Blob(pieces, { type: recorder.mimeType }));
    if (played?.kind !== 'sound') return null;
    return encode({ samples: played.samples, sampleRateHz: Hertz(played.sampleRateHz) });
  };
  return { stop, note: note() };
}
