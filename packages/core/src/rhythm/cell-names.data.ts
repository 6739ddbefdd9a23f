/**
 * Names of common cells, as teachers say them.
 * Source: common practice (counting syllables and "quarter", "rest", "triplet"); the longer phrases are ours.
 */
export const CELL_NAMES: Readonly<Record<string, string>> = {
  rest: '.',
  quarter: 'x',
  eighths: 'xx',
  and: '.x',
  triplet: 'xxx',
  'first triplet': 'x..',
  'middle triplet': '.x.',
  'last triplet': '..x',
  'first and last triplet': 'x.x',
  'first two triplets': 'xx.',
  'last two triplets': '.xx',
  'triplet rest': '...',
  sixteenths: 'xxxx',
  e: '.x..',
  a: '...x',
  'one e': 'xx..',
  'one a': 'x..x',
  'e and': '.xx.',
  'e a': '.x.x',
  'and a': '..xx',
  'one e and': 'xxx.',
  'one e a': 'xx.x',
  'one and a': 'x.xx',
  'e and a': '.xxx',
  sextuplet: 'xxxxxx',
};
