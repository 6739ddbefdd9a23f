/**
 * What engines with windows need of a machine that has none: a screen and a loudspeaker that nobody hears. What is
 * started here ends with this process, however it ends.
 */
import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';

/** Runs a program that is named by the environment, or by its first argument, and ends it and its children with us. */
export const END_WITH_US = fileURLToPath(new URL('end-with-us.sh', import.meta.url));

/** Whom programs of ours are started by; whatever they ask for is refused, since their group is no shell's. */
type Environment = Readonly<Record<string, string>>;

/** Starts a program, in a group of processes of its own that ends with us. */
export function startWithUs(
  program: string,
  args: readonly string[],
  env: Environment,
  more: readonly 'pipe'[] = [],
): ChildProcess {
  const stdio: SpawnOptions['stdio'] = ['pipe', 'ignore', 'ignore', ...more];
  const child = spawn(END_WITH_US, [program, ...args], {
    stdio,
    detached: true,
    env: { ...process.env, ...env },
  });
  // What is left of it is not waited for.
  child.unref();
  return child;
}

/** A folder of our own, gone with this process. */
function folderWithUs(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), name));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Waits for something to be so. @throws Error after half a minute */
export async function wait(what: string, isSo: () => boolean | Promise<boolean>): Promise<void> {
  for (const end = Date.now() + 30_000; Date.now() < end; ) {
    if (await isSo()) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`${what} did not start`);
}

/** A sound server of our own, with one loudspeaker that nobody hears. @returns the environment that finds it */
async function startLoudspeaker(): Promise<Environment> {
  const folder = folderWithUs('shedbook-sound-');
  const modules = ['module-native-protocol-unix', 'module-null-sink sink_name=room'];
  const options = ['-n', '--daemonize=no', '--exit-idle-time=-1', '--log-target=null'];
  const environment = { XDG_RUNTIME_DIR: folder, PULSE_SERVER: `unix:${folder}/pulse/native` };
  startWithUs('pulseaudio', [...options, ...modules.flatMap((module) => ['-L', module])], environment);
  await wait('pulseaudio', () => existsSync(join(folder, 'pulse/native')));
  return environment;
}

/** A screen of our own. @returns the environment that finds it */
async function startScreen(): Promise<Environment> {
  const args = ['-displayfd', '3', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp'];
  const screen = startWithUs('Xvfb', args, {}, ['pipe']);
  const number = await new Promise<string>((resolve, reject) => {
    screen.once('error', reject);
    screen.once('exit', () => reject(new Error('Xvfb ended')));
    (screen.stdio[3] as Readable).once('data', (data) => resolve(String(data).trim()));
  });
  return { DISPLAY: `:${number}` };
}

let loudspeaker: ReturnType<typeof startLoudspeaker> | null = null;
let screen: ReturnType<typeof startScreen> | null = null;

/** The environment of a loudspeaker that nobody hears. */
export function silentLoudspeaker(): ReturnType<typeof startLoudspeaker> {
  loudspeaker ??= startLoudspeaker();
  return loudspeaker;
}

/** The environment of a screen that nobody sees. */
export function hiddenScreen(): ReturnType<typeof startScreen> {
  screen ??= startScreen();
  return screen;
}
