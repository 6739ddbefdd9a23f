/** Where lessons are kept when nobody says otherwise: the user's data folder, never the program's. */
import { homedir } from 'node:os';
import { join } from 'node:path';

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * The data folder: `SHEDBOOK_DATA`, or the one that the system keeps for a user's data.
 * Source: XDG Base Directory Specification 0.8 (a relative `XDG_DATA_HOME` is to be ignored); the platforms' own
 * customs elsewhere.
 */
export function defaultDataDir(environment: Environment, platform: string, home: string = homedir()): string {
  if (environment['SHEDBOOK_DATA']) return environment['SHEDBOOK_DATA'];
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'shedbook');
  if (platform === 'win32')
    return join(environment['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'shedbook');
  const xdg = environment['XDG_DATA_HOME'];
  return join(xdg?.startsWith('/') ? xdg : join(home, '.local', 'share'), 'shedbook');
}
