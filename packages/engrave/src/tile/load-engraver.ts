/// <reference path="../vendor.d.ts" />
/** Loads verovio (WebAssembly, about 7 MB): in Node, in a browser and in its workers alike. */
import { createEngraver, type Engraver } from './engraver.ts';

/** An engraver with its own verovio. Its warnings are kept off the console. */
export async function loadEngraver(): Promise<Engraver> {
  const [{ default: createModule }, { enableLog, LOG_OFF, VerovioToolkit }] = await Promise.all([
    import('verovio/wasm'),
    import('verovio/esm'),
  ]);
  const verovioModule = await createModule();
  enableLog(LOG_OFF, verovioModule);
  return createEngraver(new VerovioToolkit(verovioModule));
}
