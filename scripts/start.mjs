/** `npm start [-- OPTION …]`: installs and builds what is missing, then serves the desk; options are those of `serve`. */
import { buildToRun, ensureInstalled } from './run.mjs';

await ensureInstalled('start');
await buildToRun();
await import('./desk.mjs');
