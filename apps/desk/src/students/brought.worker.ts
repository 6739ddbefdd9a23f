/** Reads what a student brings, beside the page. */
import { type Brought, readBroughtFile } from './take-in.ts';

/** A file that is to be read. */
export interface BroughtOrder {
  readonly file: Blob;
  readonly name: string;
}

async function answer({ file, name }: BroughtOrder): Promise<Brought> {
  return readBroughtFile(new Uint8Array(await file.arrayBuffer()), name);
}

self.onmessage = ({ data }: MessageEvent<BroughtOrder>) => {
  answer(data).then(
    (brought) => self.postMessage(brought),
    () => self.postMessage(null),
  );
};
