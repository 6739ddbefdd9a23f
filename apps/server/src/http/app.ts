/** The server's face: the desk's files and the routes, with what guards them. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import { TooMuchError } from '@shedbook/host';
import { policyOf } from '@shedbook/pack/serving';
import {
  FIRST_TEACHER,
  isOpen,
  type Refusal,
  ROUTES,
  type Route,
  refusal,
  type Teacher,
} from '@shedbook/routes';
import { CLI, pickLanguage } from '@shedbook/words';
import Fastify, { type FastifyError, type FastifyInstance, type FastifyRequest } from 'fastify';
import type { ImportMaker } from '../files/import-maker.ts';
import type { FilmMaker } from '../films/film-maker.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { BookStore } from '../store/books.ts';
import { DamagedError, isAway, isDamage, isFull } from '../store/damaged.ts';
import type { DemonstrationStore } from '../store/demonstrations.ts';
import type { HourStore } from '../store/hours.ts';
import type { Journal } from '../store/journal.ts';
import type { LessonStore } from '../store/lessons.ts';
import type { LinkStore } from '../store/links.ts';
import type { MediaStore } from '../store/media-files.ts';
import type { Owners } from '../store/owners.ts';
import type { PasskeyStore } from '../store/passkeys.ts';
import type { StorePlace } from '../store/place.ts';
import type { SignInStore } from '../store/sign-in.ts';
import type { StudentStore } from '../store/students.ts';
import type { TakeStore } from '../store/takes.ts';
import type { TeacherStore } from '../store/teachers.ts';
import type { Changes } from '../week/changes.ts';
import { createDoor } from '../week/door.ts';
import { countIntake } from '../week/intake.ts';
import { keepPrivatePacks } from '../week/private-packs.ts';
import { allHandlers } from './all-handlers.ts';
import { addCaller, noteCaller } from './caller.ts';
import { visitorOf } from './cookie.ts';
import { isOurs, type Whereabouts } from './guard.ts';
import { languagesOf } from './languages-of.ts';
import { pagePolicy } from './page-policy.ts';
import { addPracticePages } from './practice-pages.ts';
import { registerRoutes, sendRefusal } from './register.ts';

/** What the server is made of. */
export interface AppParts {
  readonly store: LessonStore;
  readonly students: StudentStore;
  readonly links: LinkStore;
  readonly takes: TakeStore;
  readonly media: MediaStore;
  readonly demonstrations: DemonstrationStore;
  readonly hours: HourStore;
  readonly books: BookStore;
  readonly journal: Journal;
  readonly changes: Changes;
  readonly signIn: SignInStore;
  readonly teachers: TeacherStore;
  readonly owners: Owners;
  readonly passkeys: PasskeyStore;
  /** Whether whoever comes to the desk has to sign in. */
  readonly asksWho: () => Promise<boolean>;
  readonly sheets: SheetMaker;
  /** Makes packs, which takes long, in a thread of its own. */
  readonly packs: SheetMaker;
  readonly imports: ImportMaker;
  readonly films: FilmMaker;
  /** Where the store is. */
  readonly place: StorePlace;
  /** Folder of recordings and media. */
  readonly dataDir: string;
  /** Folder of the built desk. */
  readonly staticDir: string;
  readonly where: Whereabouts;
  /** Milliseconds in which a request must have come whole. */
  readonly requestTimeoutMs: number;
}

/** Bytes of a request at most: an imported file is the largest. */
const BODY_LIMIT_BYTES = 8 * 1024 * 1024;

function badRequest(path: string, problem: string): Refusal {
  return refusal('bad-request', { places: [{ path, problem }] });
}

function addErrors(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    if (reply.raw.destroyed) return undefined;
    if (error.statusCode === 413)
      return sendRefusal(
        reply,
        refusal('too-large', { mostBytes: request.routeOptions.bodyLimit ?? BODY_LIMIT_BYTES }),
      );
    if (error.statusCode !== undefined && error.statusCode < 500)
      return sendRefusal(reply, badRequest('body', error.code));
    if (error instanceof DamagedError || isDamage(error)) return sendRefusal(reply, refusal('damaged', {}));
    if (isFull(error)) return sendRefusal(reply, refusal('disk-full', {}));
    if (isAway(error)) return sendRefusal(reply, refusal('store-away', {}));
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

/** What the desk may load: its start page has a script of its own in it, which speaks where a browser is too old. */
function deskPolicy(staticDir: string): string {
  const page = join(staticDir, 'index.html');
  return existsSync(page) ? pagePolicy(policyOf(readFileSync(page, 'utf8'))) : pagePolicy();
}

/** The routes that answer only where somebody has signed in. */
const GUARDED: ReadonlySet<string> = new Set(
  Object.values(ROUTES)
    .filter((each: Route) => !isOpen(each))
    .map((each: Route) => `${each.method} ${each.path}`),
);

/** Who asks where nobody has to say who they are. */
const ALONE: Teacher = { id: FIRST_TEACHER, name: '', role: 'head' };

/** Who may come in: pages of this server, and to the desk's routes whoever has signed in where that is asked. */
function addGuard(app: FastifyInstance, { where, asksWho, signIn, staticDir }: AppParts): void {
  const policy = deskPolicy(staticDir);
  app.addHook('onRequest', async (request, reply) => {
    if (!isOurs(request, where)) return sendRefusal(reply, refusal('foreign-origin', {}));
    reply.header('content-security-policy', policy);
    reply.header('x-content-type-options', 'nosniff');
    reply.header('referrer-policy', 'no-referrer');
    const route = `${request.method === 'HEAD' ? 'GET' : request.method} ${request.routeOptions.url ?? ''}`;
    if (!GUARDED.has(route)) return undefined;
    const { session } = visitorOf(request);
    const whoCame = async () => (session === null ? null : signIn.whoIs(session));
    const teacher = (await asksWho()) ? await whoCame() : ALONE;
    if (!teacher) return sendRefusal(reply, refusal('sign-in-first', {}));
    noteCaller(request, teacher);
    return undefined;
  });
}

/** Milliseconds that never go back. */
function steadyMs(): number {
  return performance.now();
}

/** Where others reach a server that listens, with a slash at the end. */
function addressOf(app: FastifyInstance, { address }: Whereabouts): string {
  return `${address ?? app.listeningOrigin}/`.replace(/\/+$/, '/');
}

/** The server, not yet listening. */
export function createApp(parts: AppParts): FastifyInstance {
  const { store, students, links, where, requestTimeoutMs } = parts;
  const app = Fastify({
    bodyLimit: BODY_LIMIT_BYTES,
    logger: false,
    forceCloseConnections: true,
    requestTimeout: requestTimeoutMs,
    // A program that stands before the server on this computer says who asks.
    trustProxy: where.address === null ? false : 'loopback',
    // Node looks for requests that are overdue this often; the default is half a minute.
    http: { connectionsCheckingInterval: requestTimeoutMs / 4, headersTimeout: requestTimeoutMs },
  });
  addCaller(app);
  addGuard(app, parts);
  addErrors(app);
  const door = createDoor(links, students, steadyMs);
  const privatePacks = keepPrivatePacks(parts);
  const handlers = allHandlers({
    ...parts,
    door,
    privatePacks,
    intake: countIntake(steadyMs),
    address: () => addressOf(app, where),
    clock: steadyMs,
  });
  const isSafe = where.address?.startsWith('https:') ?? false;
  const { changes, journal, owners } = parts;
  registerRoutes(app, handlers, {
    ...{ isSafe, onChange: changes.tell, journal },
    guard: { owners },
  });
  addPracticePages(app, { door, store, packs: privatePacks });
  addStudio(app, parts.staticDir);
  return app;
}
