/** `npm start`: installs what is missing, then builds the demo lesson and says where it lies. */
import { build, ensureInstalled, run } from './run.mjs';

ensureInstalled();
build();
run(process.execPath, [
  'apps/cli/bin/shedbook.mjs',
  'build',
  'demo/first-swing.lesson.yaml',
  '--out',
  'out/first-swing',
  '--audio',
  'mp3',
]);
