import { expect, it } from 'vitest';
import { defaultDataDir } from './data-dir.ts';
import { browserCommand } from './open-browser.ts';

it('[SE16] keeps lessons in the user’s data folder', () => {
  // standard: XDG Base Directory Specification 0.8, $XDG_DATA_HOME
  expect(defaultDataDir({}, 'linux', '/teacher')).toBe('/teacher/.local/share/shedbook');
  expect(defaultDataDir({ XDG_DATA_HOME: '/data' }, 'linux', '/teacher')).toBe('/data/shedbook');
  expect(defaultDataDir({ XDG_DATA_HOME: 'data' }, 'linux', '/teacher')).toBe(
    '/teacher/.local/share/shedbook',
  );
  expect(defaultDataDir({ SHEDBOOK_DATA: '/lessons' }, 'linux', '/teacher')).toBe('/lessons');
  // common practice
  expect(defaultDataDir({}, 'darwin', '/teacher')).toBe('/teacher/Library/Application Support/shedbook');
});

it('[SE17] opens a browser only where there is a screen', () => {
  const url = 'http://127.0.0.1:4747/';
  expect(browserCommand(url, 'linux', {})).toBeNull();
  expect(browserCommand(url, 'linux', { DISPLAY: ':0' })).toEqual(['xdg-open', [url]]);
  expect(browserCommand(url, 'linux', { DISPLAY: ':0', CI: 'true' })).toBeNull();
  expect(browserCommand(url, 'darwin', {})).toEqual(['open', [url]]);
});
