/** The server's face: the desk's files and the routes, with what guards them. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import { type Refusal, refusal } from '@shedbook/routes';
import { CLI, pickLanguage } from '@shedbook/words';
import Fastify, { type FastifyError, type FastifyInstance, type FastifyRequest } from 'fastify';
import type { ImportMaker } from '../files/import-maker.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import { TooMuchError } from '../sheet/thread.ts';
import { DamagedError, isDamage } from '../store/damaged.ts';
import type { LessonStore } from '../store/lessons.ts';
import type { StudentStore } from '../store/students.ts';
import { fileHandlers } from './file-handlers.ts';
import { isOurs } from './guard.ts';
import { lessonHandlers } from './lesson-handlers.ts';
import { registerRoutes, sendRefusal } from './register.ts';
import { studentHandlers } from './student-handlers.ts';

/** What the server is made of. */
export interface AppParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly sheets: SheetMaker;
  /** Makes packs, which takes long, in a thread of its own. */
  readonly packs: SheetMaker;
  readonly imports: ImportMaker;
  /** Folder of the built desk. */
  readonly staticDir: string;
  /** Host that it listens on. */
  readonly host: string;
  /** Milliseconds in which a request must have come whole. */
  readonly requestTimeoutMs: number;
}

/** Bytes of a request at most: an imported file is the largest. */
const BODY_LIMIT_BYTES = 8 * 1024 * 1024;

/** What a page of ours may load: its own files; fonts, scripts and workers come from nowhere else. */
const CONTENT_POLICY = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "style-src 'self' 'unsafe-inline'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "frame-ancestors 'none'",
  "base-uri 'none'",
].join('; ');

function badRequest(path: string, problem: string): Refusal {
  return refusal('bad-request', { places: [{ path, problem }] });
}

function addErrors(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, _request, reply) => {
    if (reply.raw.destroyed) return undefined;
    if (error.statusCode === 413)
      return sendRefusal(reply, refusal('too-large', { mostBytes: BODY_LIMIT_BYTES }));
    if (error.statusCode !== undefined && error.statusCode < 500)
      return sendRefusal(reply, badRequest('body', error.code));
    if (error instanceof DamagedError || isDamage(error)) return sendRefusal(reply, refusal('damaged', {}));
    if (error instanceof TooMuchError) return sendRefusal(reply, refusal('too-much', {}));
    process.stderr.write(`Internal error: ${error.stack ?? error.message}\n`);
    return sendRefusal(reply, refusal('internal', {}));
  });
}

/** A page of the desk, as opposed to a route or a file. */
function isPage({ method, url }: FastifyRequest): boolean {
  return method === 'GET' && !url.startsWith('/api/') && !/\.\w+$/.test(url);
}

function addStudio(app: FastifyInstance, staticDir: string): void {
  const built = existsSync(join(staticDir, 'index.html'));
  if (built) {
    app.register(fastifyStatic, {
      root: staticDir,
      setHeaders: (reply, path) => {
        const named = path.includes('/assets/');
        reply.setHeader('cache-control', named ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    });
  }
  app.setNotFoundHandler((request, reply) => {
    if (!isPage(request)) return sendRefusal(reply, badRequest('url', 'nothing_there'));
    if (built) return reply.sendFile('index.html');
    const { words } = CLI[pickLanguage(languagesOf(request))];
    return reply.code(503).type('text/plain').send(words.serve.notBuilt);
  });
}

/** The languages that whoever asks reads, the dearest first. Source: RFC 9110, section 12.5.4, weights left aside. */
function languagesOf({ headers }: FastifyRequest): readonly string[] {
  const wanted = headers['accept-language'] ?? '';
  return wanted.split(',').map((each) => each.replace(/;.*/, '').trim());
}

/** The server, not yet listening. */
export function createApp({
  store,
  students,
  sheets,
  packs,
  imports,
  staticDir,
  host,
  requestTimeoutMs,
}: AppParts): FastifyInstance {
  const app = Fastify({
    bodyLimit: BODY_LIMIT_BYTES,
    logger: false,
    forceCloseConnections: true,
    requestTimeout: requestTimeoutMs,
    // Node looks for requests that are overdue this often; the default is half a minute.
    http: { connectionsCheckingInterval: requestTimeoutMs / 4, headersTimeout: requestTimeoutMs },
  });
  app.addHook('onRequest', async (request, reply) => {
    if (!isOurs(request, host)) {
      await sendRefusal(reply, refusal('foreign-origin', {}));
      return;
    }
    reply.header('content-security-policy', CONTENT_POLICY);
    reply.header('x-content-type-options', 'nosniff');
    reply.header('referrer-policy', 'no-referrer');
  });
  addErrors(app);
  registerRoutes(app, {
    ...lessonHandlers(store, students, sheets),
    ...studentHandlers(students),
    ...fileHandlers({ store, students, sheets, packs, imports }),
  });
  addStudio(app, staticDir);
  return app;
}
