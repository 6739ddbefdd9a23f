/** `npm run fix`: formats, and writes anew every page that is generated from the code. */
import { ensureInstalled, run, tool } from './run.mjs';

/** What writes a page; each is a check that refuses a stale one. */
const WRITERS = ['rooms/table', 'reference', 'routes', 'api'];

await ensureInstalled();
await tool('biome', ['check', '--write', '.']);
await tool('tsc', ['-b']);
for (const writer of WRITERS) await run(process.execPath, [`internal/checks/${writer}.mjs`, '--write']);
