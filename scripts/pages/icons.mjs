/**
 * `node scripts/pages/icons.mjs`: the mark of the pages as pictures for home screens, beside the mark itself. What is put
 * among apps has no transparent edge there: the mark stands on the stand's colour, and where a system cuts its own shape,
 * within the circle that every shape leaves whole.
 *
 * Sources: W3C Web Application Manifest, `purpose`: maskable icons keep a circle of 40 % of the width free of cuts.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { ROOT } from '../run.mjs';

const PUBLIC = ['apps/practice/public', 'apps/desk/public'].map((path) => join(ROOT, path));
const STAND = '#ccd4d2';

/** Name, width in pixels, part of the width that the mark takes, what it stands on. */
const ICONS = [
  ['icon-180.png', 180, 0.76, STAND],
  ['icon-192.png', 192, 0.92, null],
  ['icon-512.png', 512, 0.92, null],
  ['icon-maskable-512.png', 512, 0.56, STAND],
];

/** The mark is drawn on 32 units. */
const UNITS = 32;

function drawingOf(mark, share, ground) {
  const inside = mark.replace(/^<svg[^>]*>/, '').replace(/<\/svg>\s*$/, '');
  const edge = (UNITS * (1 - share)) / 2;
  const back = ground ? `<rect width="${UNITS}" height="${UNITS}" fill="${ground}"/>` : '';
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${UNITS} ${UNITS}">${back}<g transform="translate(${edge} ${edge}) scale(${share})">${inside}</g></svg>`;
}

await initWasm(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')));
for (const folder of PUBLIC) {
  const mark = readFileSync(join(folder, 'mark.svg'), 'utf8');
  for (const [name, width, share, ground] of ICONS) {
    const picture = new Resvg(drawingOf(mark, share, ground), { fitTo: { mode: 'width', value: width } });
    writeFileSync(join(folder, name), picture.render().asPng());
  }
}
