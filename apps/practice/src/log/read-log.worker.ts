/** Reads a log that a student brings, beside the page. */
import { readLogText } from './log-read.ts';

self.onmessage = async ({ data }: MessageEvent<File>) => {
  self.postMessage(readLogText(await data.text(), data.name));
};
