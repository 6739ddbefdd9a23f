/**
 * Recording a take at the desk: by the microphone, nothing taken away from its sound, or from an electronic kit.
 *
 * Sources: MediaStream Recording; Web MIDI API.
 */

import { strokeSent } from '@shedbook/exchange';
import type { StruckVoice } from '@shedbook/listen';
import { askForMidi, UNTOUCHED } from '@shedbook/stand';
import type { Played } from './messages.ts';
import { readPlayed } from './sound-file.ts';

/** What a take is recorded with. */
export type Source = 'microphone' | 'kit';

/** A recording that goes on. */
export interface Recorder {
  /** Ends it. @returns what was played; null where it cannot be read */
  readonly stop: () => Promise<Played | null>;
}

async function recordMicrophone(): Promise<Recorder> {
  const stream = await navigator.mediaDevices.getUserMedia({ audio: UNTOUCHED });
  const recorder = new MediaRecorder(stream);
  const pieces: Blob[] = [];
  recorder.ondataavailable = ({ data }) => pieces.push(data);
  const ended = new Promise((resolve) => {
    recorder.onstop = resolve;
  });
  recorder.start();
  return {
    stop: async () => {
      recorder.stop();
      await ended;
      for (const track of stream.getTracks()) track.stop();
      return readPlayed(new Blob(pieces, { type: recorder.mimeType }));
    },
  };
}

async function recordKit(): Promise<Recorder> {
  const access = await askForMidi();
  const inputs = [...access.inputs.values()];
  if (inputs.length === 0) throw new DOMException('no input', 'NotFoundError');
  const notes: StruckVoice[] = [];
  for (const input of inputs) {
    input.onmidimessage = ({ data, timeStamp }) => {
      const sent = strokeSent(data);
      if (sent) notes.push({ ...sent, timeSeconds: (timeStamp / 1000) as StruckVoice['timeSeconds'] });
    };
  }
  return {
    stop: async () => {
      for (const input of inputs) input.onmidimessage = null;
      return { kind: 'notes', notes };
    },
  };
}

/** Begins to record. @throws DOMException where the device is not there or not allowed */
export function record(source: Source): Promise<Recorder> {
  return source === 'microphone' ? recordMicrophone() : recordKit();
}
