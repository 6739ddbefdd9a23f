/**
 * `npm run test:engines [OPTION …]`: what teacher and student do, told in Chromium, Firefox and WebKit; options are those
 * of vitest. An engine that is missing is named at the end; with CI=true that is a failure.
 */
import { preparePath } from '../internal/testing/programs.mjs';
import { installPrograms, leftOut, sayLeftOut } from './outside.mjs';
import { attempt, build, ensureInstalled, toolPath } from './run.mjs';

await ensureInstalled();
preparePath();
const missing = await installPrograms();
const files = leftOut(missing).filter(({ path }) => path.includes('/engines/'));
await build();
process.env.SHEDBOOK_ENGINES = 'all';
// One after the other: each plays and is heard in its own time.
process.env.VITEST_MAX_WORKERS = '1';
const excluded = files.flatMap(({ path }) => ['--exclude', path]);
const options = ['run', 'browser/engines', ...excluded, ...process.argv.slice(2)];
const status = await attempt(toolPath('vitest'), options);
sayLeftOut(files);
process.exitCode = status === 0 && files.length > 0 && process.env.CI ? 1 : status;
