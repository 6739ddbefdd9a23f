/** `npm start [-- OPTION …]`: installs and builds what is missing, then serves the desk; options are those of `serve`. */
import { build, ensureInstalled } from './run.mjs';

ensureInstalled();
build();
await import('./desk.mjs');
