/**
 * The desk in the browser and, once it answers, the demo lesson as files; each says where it lies. Ctrl+C ends both.
 * `--no-files` leaves the files out; every other option is one of `serve`.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { changedAt, ROOT } from './run.mjs';

const COMMAND = join(ROOT, 'bin/shedbook.mjs');
const LESSON = join(ROOT, 'demo/first-swing.lesson.yaml');
const FOLDER = 'out/first-swing';
const STAMP = join(ROOT, 'out/.first-swing-made');

/** Whether the files are there, and newer than the lesson and the program that makes them. */
function isMade() {
  if (!existsSync(STAMP) || !existsSync(join(ROOT, FOLDER, 'sheet.pdf'))) return false;
  const packages = readdirSync(join(ROOT, 'packages')).map((name) => join(ROOT, 'packages', name, 'dist'));
  const sources = [LESSON, join(ROOT, 'apps/cli/dist'), ...packages.filter(existsSync)];
  return Math.max(...sources.map(changedAt)) < statSync(STAMP).mtimeMs;
}

function shedbook(args, output = 'inherit') {
  return spawn(process.execPath, [COMMAND, ...args], { cwd: ROOT, stdio: ['inherit', output, 'inherit'] });
}

function makeDemo() {
  const ready = `The demo lesson as files (sheet, sound, MIDI, MusicXML): ${FOLDER}`;
  if (isMade()) {
    console.log(ready);
    return null;
  }
  console.log(`Making the demo lesson's files in ${FOLDER} …`);
  const making = shedbook(['build', LESSON, '--out', FOLDER, '--audio', 'mp3']);
  making.on('exit', (status) => {
    if (status !== 0) return;
    mkdirSync(join(ROOT, 'out'), { recursive: true });
    writeFileSync(STAMP, '');
  });
  return making;
}

const options = process.argv.slice(2);
const serving = shedbook(['serve', ...options.filter((each) => each !== '--no-files')], 'pipe');
serving.stdout.pipe(process.stdout);
let making = null;
serving.on('exit', (status) => {
  making?.kill();
  process.exitCode = status ?? 0;
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => serving.kill(signal));
const wantsFiles = !options.includes('--no-files') && !options.includes('--help');
serving.stdout.once('data', () => {
  if (wantsFiles) making = makeDemo();
});
