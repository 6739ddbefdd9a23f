import { expect, it } from 'vitest';
import { PROBES } from '../../../scripts/pages/old-browser.ts';
import { oldestBrowsers } from '../../../scripts/pages/oldest-browsers.mjs';
import { isAtMost, oldestInData } from './oldest.mjs';
import { entryOf, firstVersion } from './support.mjs';

it('[ST2700] asks a browser for what came with the oldest versions of the table, and with no other', () => {
  const oldest = Object.entries(oldestInData(oldestBrowsers()));
  // published: MDN browser compatibility data 8.1.9: the newest of what is asked for
  const asked = oldest.map(([browser]) => {
    const versions = PROBES.map(([part]) => firstVersion(entryOf(part).__compat, browser));
    return [browser, versions.sort((a, b) => (isAtMost(String(a), String(b)) ? 1 : -1))[0]];
  });
  expect(asked).toEqual(oldest);
});
