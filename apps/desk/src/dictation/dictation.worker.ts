/** Writing down what was played, beside the page. */
import { Hertz } from '@shedbook/core';
import { readMidi } from '@shedbook/exchange';
import { type Known, type StruckVoice, strokesSent, TakeListener, transcribeNotes } from '@shedbook/listen';
import type { DictationAnswer, DictationOrder, Played } from './messages.ts';

/** The strokes of a MIDI file; null where it is none. */
function notesOf(bytes: Uint8Array): readonly StruckVoice[] | null {
  const { notes, problems } = readMidi(bytes);
  if (problems.some(({ severity }) => severity === 'error')) return null;
  return strokesSent(notes);
}

function writeDown(played: Played, known: Known): DictationAnswer {
  if (played.kind === 'sound') {
    const listener = new TakeListener(Hertz(played.sampleRateHz));
    listener.push(played.samples);
    return listener.transcribe(known);
  }
  const notes = played.kind === 'notes' ? played.notes : notesOf(played.bytes);
  return notes && transcribeNotes(notes, known);
}

self.onmessage = ({ data: { played, meter, feel } }: MessageEvent<DictationOrder>) => {
  self.postMessage(writeDown(played, { meter, feel }));
  self.close();
};
