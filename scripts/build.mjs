/** `npm run build`: installs what is missing and compiles every workspace. */
import { build, ensureInstalled } from './run.mjs';

ensureInstalled();
build();
