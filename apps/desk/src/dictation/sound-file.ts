/** Reading what was dropped or recorded. */
import type { Played } from './messages.ts';

const RATE_HZ = 44_100;
/** Standard MIDI Files 1.0: the first four bytes. */
const MIDI_MARK = 'MThd';

/** All channels as one. */
function mono(buffer: AudioBuffer): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(buffer.length);
  for (let channel = 0; channel < buffer.numberOfChannels; channel += 1)
    for (const [i, sample] of buffer.getChannelData(channel).entries())
      samples[i] = samples[i]! + sample / buffer.numberOfChannels;
  return samples;
}

/** What a file has of a take; null where the browser cannot read it. */
export async function readPlayed(file: Blob): Promise<Played | null> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (new TextDecoder('latin1').decode(bytes.subarray(0, MIDI_MARK.length)) === MIDI_MARK)
    return { kind: 'midi', bytes };
  try {
    const context = new OfflineAudioContext(1, 1, RATE_HZ);
    const buffer = await context.decodeAudioData(bytes.buffer);
    return { kind: 'sound', samples: mono(buffer), sampleRateHz: RATE_HZ };
  } catch {
    return null;
  }
}
