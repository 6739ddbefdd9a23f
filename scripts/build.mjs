/** `npm run build`: installs what is missing, compiles and checks every workspace and builds the pages. */
import { build, ensureInstalled } from './run.mjs';

await ensureInstalled();
await build();
