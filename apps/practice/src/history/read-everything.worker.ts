/** Reads everything of a student as it was saved, beside the page. */
import { type LogRead, readLogText } from '../log/log-read.ts';
import { type BroughtBack, unpackEverything } from './everything.ts';

/** What was read; the log by itself. */
export type EverythingRead = Omit<BroughtBack, 'logText'> & { readonly log: LogRead };

function read(bytes: Uint8Array): EverythingRead | null {
  try {
    const { logText, ...rest } = unpackEverything(bytes);
    return { ...rest, log: readLogText(logText, 'practice-log.json') };
  } catch {
    return null;
  }
}

self.onmessage = async ({ data }: MessageEvent<Blob>) => {
  self.postMessage(read(new Uint8Array(await data.arrayBuffer())));
};
