/**
 * `npm test [OPTION …]`: installs what is missing, then types, lint, format, rooms, rules, docs and every test; options
 * are those of vitest. What could not run is named at the end with its reason; with CI=true that is a failure.
 */
import { preparePath } from '../internal/testing/programs.mjs';
import { installPrograms, leftOut, sayLeftOut } from './outside.mjs';
import { allSideBySide, attempt, build, ensureInstalled, toolPath } from './run.mjs';

await ensureInstalled();
preparePath();
const missing = await installPrograms();
const files = leftOut(missing);
// Types of tests and format need nothing that is built; the other checks look at it.
const said = await Promise.all([
  allSideBySide([
    [toolPath('tsc'), ['-p', 'tsconfig.test.json']],
    [toolPath('biome'), ['check', '.']],
  ]),
  build().then(() => allSideBySide([[process.execPath, ['internal/checks/all.mjs']]])),
]);
const failed = said.flat().find((each) => each !== 0);
if (failed !== undefined) process.exit(failed);
const excluded = files.flatMap(({ path }) => ['--exclude', path]);
const status = await attempt(toolPath('vitest'), ['run', ...excluded, ...process.argv.slice(2)]);
sayLeftOut(files);
const isIncomplete = files.length > 0 && Boolean(process.env.CI);
process.exitCode = status !== 0 || !isIncomplete ? status : 1;
