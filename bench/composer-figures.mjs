/**
 * What the composer reaches, over grooves and vocabularies of many kinds, a line each.
 *
 * `node bench/composer-figures.mjs [SEEDS] [NAME] [FROM]` after a build; a thousand seeds take half an hour of a
 * processor's time. `npm run bench composer` prints fewer seeds beside the other figures.
 */
import { CASES, countPages, sayCount } from './composer-pages.mjs';

const [seeds = '1000', wanted = '', from = '60000'] = process.argv.slice(2);
for (const [name, page] of Object.entries(CASES).filter(([each]) => each.includes(wanted))) {
  const range = { seeds: Number(seeds), from: Number(from) };
  console.log(`${name.padEnd(32)} ${page[0]} bars: ${sayCount(countPages(page, range))}`);
}
