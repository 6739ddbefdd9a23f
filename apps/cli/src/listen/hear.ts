/**
 * From a take on disk to its report: a recording, or a MIDI file of an electronic kit.
 *
 * Conventions: what a file is, its first bytes say, not its name.
 */
import { padVoice, Seconds } from '@shedbook/core';
import type { KitKeys } from '@shedbook/exchange';
import { decodeSound } from '@shedbook/host';
import {
  type Asked,
  createLiveListener,
  type KnownKit,
  type Listened,
  listenBeside,
  listenToNotes,
  PadListener,
  startLoops,
  strokesSent,
  TakeListener,
} from '@shedbook/listen';
import type { Speaker } from '../terminal.ts';
import { isMidi, readMidiTake } from './midi-take.ts';
import { readRecording } from './read-recording.ts';

/** How a take is to be heard. */
export interface HearOptions {
  /** Told what was left out of the take. */
  readonly terminal: Speaker;
  /** Where the recording began with the click: how late the click sounds in it; else null. */
  readonly latencySeconds: Seconds | null;
  /** Whether it was played on one surface, the lesson as `ontoPad` gives it. */
  readonly onPad: boolean;
  /** A recording of what a loudspeaker played during the take, or null. */
  readonly playing: string | null;
  /** Voices of the kit's own keys. */
  readonly keys: KitKeys;
  /** What a line check told of the kit, or null. */
  readonly kit: KnownKit | null;
}

/** A take as it was heard, and how the same is heard once more as something else, where no click says what it is. */
export interface HeardTake {
  readonly listened: Listened;
  readonly as: ((asked: Asked) => Listened) | null;
}

const onlySo = (listened: Listened): HeardTake => ({ listened, as: null });

function heardAs(as: (asked: Asked) => Listened, asked: Asked): HeardTake {
  return { listened: as(asked), as };
}

async function hearMidi(
  path: string,
  asked: Asked,
  { terminal, latencySeconds, onPad, keys }: HearOptions,
): Promise<HeardTake> {
  const take = await readMidiTake(path, keys, terminal);
  const notes = strokesSent(take.notes, onPad ? padVoice(asked.lesson, asked.exercise) : null);
  if (latencySeconds === null)
    return heardAs((each) => listenToNotes(notes, take.durationSeconds, each), asked);
  const listener = createLiveListener(asked, { latencySeconds, onPad });
  startLoops(listener, asked, Seconds((notes.at(-1)?.timeSeconds ?? 0) - latencySeconds));
  for (const { timeSeconds, voice, levelDb } of notes) listener.note(timeSeconds, voice, levelDb);
  return onlySo(listener.finish());
}

/** Hears a recording against the click that it began with. */
async function hearAlong(
  path: string,
  asked: Asked,
  latencySeconds: Seconds,
  { onPad, kit }: Pick<HearOptions, 'onPad' | 'kit'>,
): Promise<HeardTake> {
  const { sampleRateHz, blocks } = await decodeSound(path);
  const listener = createLiveListener(asked, {
    sampleRateHz,
    latencySeconds,
    onPad,
    ...(kit ? { kit } : {}),
  });
  let last = 0;
  for await (const block of blocks) {
    for (const { timeSeconds } of listener.push(block)) last = Math.max(last, timeSeconds);
  }
  startLoops(listener, asked, Seconds(last - latencySeconds));
  return onlySo(listener.finish());
}

async function hearSound(
  path: string,
  asked: Asked,
  { latencySeconds, onPad, playing, kit }: HearOptions,
): Promise<HeardTake> {
  const heard = kit ? { kit } : {};
  if (playing !== null) {
    const [take, known] = [await readRecording(path), await readRecording(playing)];
    return onlySo(listenBeside(take, known, asked, { onPad, ...heard }));
  }
  if (latencySeconds !== null) return hearAlong(path, asked, latencySeconds, { onPad, kit });
  const { sampleRateHz, blocks } = await decodeSound(path);
  const listener = onPad ? new PadListener(sampleRateHz) : new TakeListener(sampleRateHz, heard);
  for await (const block of blocks) listener.push(block);
  if (listener instanceof PadListener) return onlySo(listener.finish(asked));
  return heardAs((each) => listener.finish(each), asked);
}

/**
 * Hears a take.
 * @throws InputError when it cannot be read.
 */
export async function hearTake(path: string, asked: Asked, options: HearOptions): Promise<HeardTake> {
  return (await isMidi(path)) ? hearMidi(path, asked, options) : hearSound(path, asked, options);
}
