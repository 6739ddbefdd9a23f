/** The sound of a take made smaller without loss, before it is sent. */
import { Hertz } from '@shedbook/core';
import { encodeMonoFlac } from '@shedbook/sound';

/** Where a file of one channel and 16 bits says its rate, and where its samples begin; see `ear/pcm.ts`. */
const RATE_AT = 24;
const SAMPLES_AT = 44;

/** A recording of this page as a FLAC file. */
export async function asFlac(wav: Blob): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await wav.arrayBuffer();
  const samples = new Int16Array(bytes.slice(SAMPLES_AT));
  return encodeMonoFlac(samples, Hertz(new DataView(bytes).getUint32(RATE_AT, true)));
}
