/** Opening the desk where a browser is at hand. */
import { spawn } from 'node:child_process';

type Environment = Readonly<Record<string, string | undefined>>;

/** The command that opens an address in the user's browser, or null where there is no screen to show it on. */
export function browserCommand(
  url: string,
  platform: string,
  environment: Environment,
): readonly [string, readonly string[]] | null {
  if (environment['CI'] || environment['SSH_CONNECTION']) return null;
  if (platform === 'darwin') return ['open', [url]];
  if (platform === 'win32') return ['rundll32', ['url.dll,FileProtocolHandler', url]];
  return environment['DISPLAY'] || environment['WAYLAND_DISPLAY'] ? ['xdg-open', [url]] : null;
}

/** Opens an address in the user's browser. @returns whether there was a browser to ask. */
export function openBrowser(url: string): boolean {
  const command = browserCommand(url, process.platform, process.env);
  if (!command) return false;
  const child = spawn(command[0], command[1], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
  return true;
}
