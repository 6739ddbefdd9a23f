/** `node scripts/pictures.mjs`: takes the README's pictures from the running program, into `docs`. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../internal/testing/programs.mjs';
import { build, ensureInstalled, ROOT } from './run.mjs';

const COMMAND = join(ROOT, 'bin/shedbook.mjs');
const LESSON = join(ROOT, 'demo/first-swing.lesson.yaml');
const TITLE = 'First swing';

/** An address that the browser is given the files of a pack under. */
const PRACTICE = 'http://localhost/first-swing/';

function shedbook(...args) {
  const { status, stderr } = spawnSync(process.execPath, [COMMAND, ...args], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`shedbook ${args[0]} ended with ${status}: ${stderr}`);
}

async function open(browser, viewport, url) {
  const context = await browser.newContext({ viewport, locale: 'en', deviceScaleFactor: 1 });
  const page = await context.newPage();
  if (url) await page.goto(url);
  return page;
}

function save(page, name) {
  return page.screenshot({ path: join(ROOT, 'docs', `${name}.png`), animations: 'disabled' });
}

/** The lesson's page on the desk. */
async function takeDesk(browser, folder) {
  const args = [COMMAND, 'serve', '--port', '0', '--no-open', '--data', join(folder, 'data')];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  try {
    const [said] = await once(child.stdout, 'data');
    const page = await open(browser, { width: 1280, height: 800 }, /http:\S+/.exec(said.toString())[0]);
    await page.getByRole('link', { name: `Open ${TITLE}` }).click();
    await page.locator('main svg').first().waitFor();
    await page.waitForLoadState('networkidle');
    await save(page, 'desk');
  } finally {
    child.kill();
  }
}

/** The page that students practise on, open at an exercise, on a tablet. */
async function takePractice(browser, folder) {
  const page = await open(browser, { width: 1024, height: 768 });
  await page.route(`${PRACTICE}**`, (route) => {
    const path = join(
      folder,
      'made/practice',
      new URL(route.request().url()).pathname.replace('/first-swing/', ''),
    );
    const file = existsSync(path) && statSync(path).isDirectory() ? join(path, 'index.html') : path;
    return existsSync(file) ? route.fulfill({ path: file }) : route.fulfill({ status: 404 });
  });
  await page.goto(`${PRACTICE}#3`);
  await page.locator('main svg, main img').first().waitFor();
  await page.waitForLoadState('networkidle');
  await save(page, 'practice');
}

/** The report of a take as a page: here the program's own recording, heard again. */
async function takeReport(browser, folder) {
  const picture = join(folder, 'take.svg');
  const take = join(folder, 'made/audio/03.wav');
  shedbook('listen', take, '--lesson', LESSON, '--exercise', '3', '--picture', picture);
  const page = await open(browser, { width: 1024, height: 768 });
  await page.setContent(`<body style="margin: 0">${readFileSync(picture, 'utf8')}`);
  await page
    .locator('svg')
    .first()
    .screenshot({ path: join(ROOT, 'docs/report.png') });
}

await ensureInstalled();
await build();
const folder = mkdtempSync(join(tmpdir(), 'shedbook-pictures-'));
const browser = await chromium.launch({ executablePath: await chromiumPath(), args: ['--no-sandbox'] });
try {
  shedbook('build', LESSON, '--out', join(folder, 'made'), '--audio', 'wav', '--exercise', '3', '--pack');
  await takeDesk(browser, folder);
  await takePractice(browser, folder);
  await takeReport(browser, folder);
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
