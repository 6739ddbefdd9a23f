/** `npm test`: installs what is missing, then types, lint, format, rooms, rules, docs and every test. */
import { spawnSync } from 'node:child_process';
import { build, ensureInstalled, run, tool } from './run.mjs';

/** Programs that tests compare with, and the Debian package of each. */
const PROGRAMS = {
  pdftoppm: 'poppler-utils',
  pdffonts: 'poppler-utils',
  xmllint: 'libxml2-utils',
  ffmpeg: 'ffmpeg',
  chromium: 'chromium',
  unzip: 'unzip',
};

function requirePrograms() {
  const has = (program) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
  const missing = Object.keys(PROGRAMS).filter((program) => !has(program));
  const mido = spawnSync('/usr/bin/python3', ['-c', 'import mido']).status === 0;
  const packages = new Set(missing.map((program) => PROGRAMS[program]));
  if (!mido) packages.add('python3-mido');
  if (packages.size === 0) return;
  console.error(
    `The tests compare with other programs. Install them first: apt-get install ${[...packages].join(' ')}`,
  );
  process.exit(1);
}

requirePrograms();
ensureInstalled();
build();
tool('tsc', ['-p', 'tsconfig.test.json']);
tool('biome', ['check', '.']);
run(process.execPath, ['internal/checks/all.mjs']);
tool('vitest', ['run', ...process.argv.slice(2)]);
