/**
 * `node scripts/try-package.mjs [NODE …]`: packs the program, puts it into an empty folder as somebody else would and
 * holds it to what is promised: no package's script is needed, the desk answers within three seconds, a sheet and a
 * pack can be made. With NODE, a line (24) or a version (20.19.0), it runs on the newest of that line or on that
 * version, by the binary that the registry's `node` carries.
 */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from './run.mjs';

/** Most time from the command to the first answer of the desk, in milliseconds. */
const FIRST_SCREEN_MS = 3000;

function npm(cwd, ...args) {
  return execFileSync('npm', [...args, '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd,
    encoding: 'utf8',
  });
}

/** An empty folder with the package in it and nothing else. */
function install(folder) {
  npm(ROOT, 'pack', '--pack-destination', folder);
  const tarball = readdirSync(folder).find((name) => name.endsWith('.tgz'));
  const place = join(folder, 'place');
  mkdirSync(place);
  npm(place, 'install', '--ignore-scripts', join(folder, tarball));
  return place;
}

/** The Node to run on: this one, or the newest of a line. */
function nodeOf(folder, line) {
  if (line === undefined) return process.execPath;
  const place = join(folder, `node-${line}`);
  mkdirSync(place);
  npm(place, 'install', '--ignore-scripts', `node-${process.platform}-${process.arch}@${line}`);
  return join(place, `node_modules/node-${process.platform}-${process.arch}/bin/node`);
}

/** Milliseconds until the desk has answered with its page, its lessons, the pages of a sheet and a pack. */
async function serve(node, command, data) {
  const begun = performance.now();
  const args = [command, 'serve', '--port', '0', '--no-open', '--data', data];
  const child = spawn(node, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  try {
    const [said] = await once(child.stdout, 'data');
    const url = /http:\S+/.exec(said.toString())[0];
    const answered = async (path) => {
      const response = await fetch(new URL(path, url));
      if (!response.ok) throw new Error(`${path} answered ${response.status}: ${await response.text()}`);
      return response;
    };
    const page = await (await answered('/')).text();
    const took = performance.now() - begun;
    await answered(/src="([^"]+\.js)"/.exec(page)[1]);
    const [lesson] = await (await answered('/api/lessons')).json();
    await answered(`/api/lessons/${lesson.id}/sheet.pdf`);
    await answered(`/api/lessons/${lesson.id}/practice.zip`);
    return took;
  } finally {
    child.kill();
    await once(child, 'exit');
  }
}

async function tryOn(line, folder, place) {
  const node = nodeOf(folder, line);
  const command = join(place, 'node_modules/shedbook/bin/shedbook.mjs');
  const version = execFileSync(node, ['--version'], { encoding: 'utf8' }).trim();
  // The best of three, since the machine may be busy with something else.
  let took = Number.POSITIVE_INFINITY;
  for (let time = 0; time < 3 && took > FIRST_SCREEN_MS; time += 1) {
    took = await serve(node, command, join(folder, `data-${version}-${time}`));
  }
  const out = join(folder, `out-${version}`);
  const lesson = join(place, 'node_modules/shedbook/demo/first-swing.lesson.yaml');
  const build = [command, 'build', lesson, '--out', out, '--audio', 'mp3', '--exercise', '1', '--pack'];
  execFileSync(node, build, { stdio: ['ignore', 'ignore', 'inherit'] });
  for (const name of ['sheet.pdf', 'practice.zip']) statSync(join(out, name));
  console.log(`Node ${version}: the desk answered after ${(took / 1000).toFixed(2)} s; a lesson was built.`);
  return took;
}

const folder = mkdtempSync(join(tmpdir(), 'shedbook-package-'));
try {
  const place = install(folder);
  const lines = process.argv.slice(2);
  for (const line of lines.length > 0 ? lines : [undefined]) {
    const took = await tryOn(line, folder, place);
    if (took > FIRST_SCREEN_MS) {
      console.error(`The desk took longer than ${FIRST_SCREEN_MS / 1000} s to answer.`);
      process.exitCode = 1;
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
