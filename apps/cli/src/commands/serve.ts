/** `shedbook serve`: the teacher's desk in the browser. */
import { fileURLToPath } from 'node:url';
import { openBrowser, type RunningServer, startServer } from '@shedbook/server';
import { InputError } from '../input-error.ts';
import type { Terminal } from '../terminal.ts';

/** What the command line asks for. */
export interface ServeRequest {
  readonly port?: number;
  readonly host?: string;
  /** Folder that lessons are kept in. */
  readonly data?: string;
  readonly open?: boolean;
}

/** Lessons for the first visit. */
const DEMO = fileURLToPath(new URL('../../../../demo', import.meta.url));

/**
 * Starts the desk and says where it is.
 * @returns the running server; it serves until it is closed.
 * @throws InputError when it cannot start, e.g. because its port is taken.
 */
export async function serve(request: ServeRequest, terminal: Terminal): Promise<RunningServer> {
  const { port, host, data } = request;
  const server = await startServer({
    seedLessonsDir: DEMO,
    warmsUp: true,
    ...(port === undefined ? {} : { port }),
    ...(host === undefined ? {} : { host }),
    ...(data === undefined ? {} : { dataDir: data }),
  }).catch((error: unknown) => {
    throw new InputError((error as Error).message);
  });
  terminal.say(`The desk is at ${server.url}`);
  terminal.say('It runs until this is stopped (Ctrl+C); every change is kept at once.');
  if (request.open ?? true) openBrowser(server.url);
  return server;
}

/** Serves until the process is told to stop (Ctrl+C), then closes what is open. @throws InputError as {@link serve} */
export async function serveUntilStopped(request: ServeRequest, terminal: Terminal): Promise<void> {
  const stopped = new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => resolve());
  });
  const server = await serve(request, terminal);
  await stopped;
  await server.close();
}
