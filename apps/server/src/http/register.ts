/** Registers the table of routes: what comes in is read by its schemas, what goes out is sent as the table says. */

import { Readable } from 'node:stream';
import {
  REFUSALS,
  type Refusal,
  type RefusalValues,
  ROUTE_NAMES,
  ROUTES,
  type Route,
  type RouteName,
  refusal,
  type SentFile,
} from '@shedbook/routes';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Journal, JournalNote } from '../store/journal.ts';
import { callerOf } from './caller.ts';
import { sendSession } from './cookie.ts';
import type { Caller, Handlers } from './handlers.ts';
import { JOURNALED, type Journaled, studentIn } from './journaled.data.ts';
import { sendBytes } from './ranges.ts';
import { type GuardParts, refusedTo } from './whose.ts';

type WrongPlaces = RefusalValues<'bad-request'>['places'];

/** A request after it was read: what is asked, or where it is wrong. */
type Reading =
  | { readonly asked: Readonly<Record<'params' | 'query' | 'body', unknown>> }
  | { readonly places: WrongPlaces };

/** Sends a refusal. */
export function sendRefusal(reply: FastifyReply, refused: Refusal): FastifyReply {
  return reply.code(REFUSALS[refused.code].status).send(refused);
}

function readBytes(body: unknown): { readonly value: unknown; readonly places: WrongPlaces } {
  const isFile = Buffer.isBuffer(body);
  return { value: body, places: isFile ? [] : [{ path: 'body', problem: 'not_a_file' }] };
}

/** Texts with a character that ends them early in one database, and that the other refuses. */
function nulsIn(path: string, value: unknown): WrongPlaces {
  if (typeof value === 'string') return value.includes('\0') ? [{ path, problem: 'nul_character' }] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => nulsIn(`${path}.${name}`, each));
}

function readRequest({ params, query, body }: Route, request: FastifyRequest): Reading {
  const read = (
    name: string,
    schema: Route['query'] | Exclude<Route['body'], 'bytes' | null>,
    given: unknown,
  ) => {
    const { success, data, error } = schema.safeParse(given ?? {});
    const places = (error?.issues ?? []).map(({ path, code }) => ({
      path: [name, ...path].join('.'),
      problem: code,
    }));
    return { value: success ? data : null, places: [...places, ...nulsIn(name, data)] };
  };
  const parts = {
    params: read('params', params, request.params),
    query: read('query', query, request.query),
    body:
      body === 'bytes'
        ? readBytes(request.body)
        : body === null
          ? { value: null, places: [] }
          : read('body', body, request.body),
  };
  const places = Object.values(parts).flatMap((part) => part.places);
  if (places.length > 0) return { places };
  return { asked: { params: parts.params.value, query: parts.query.value, body: parts.body.value } };
}

function sendAnswer(
  request: FastifyRequest,
  reply: FastifyReply,
  { answer }: Route,
  value: unknown,
): FastifyReply {
  if (answer.kind === 'events')
    return reply
      .type('text/event-stream')
      .header('cache-control', 'no-store')
      .send(Readable.from(value as AsyncIterable<string>));
  if (answer.kind === 'json') return reply.code(answer.status).send(value);
  if (answer.kind === 'nothing') return reply.code(204).send();
  const { name, type, content } = value as SentFile;
  reply.type(type).header('content-disposition', `attachment; filename="${name}"`);
  return content instanceof Uint8Array
    ? sendBytes(request, reply, content)
    : reply.send(Readable.from(content));
}

/** Aborted when whoever asked has gone. */
function whileWaiting(reply: FastifyReply): AbortSignal {
  const waiting = new AbortController();
  reply.raw.once('close', () => waiting.abort());
  return waiting.signal;
}

/** Whether a route changes anything that the desk shows of students. */
function changesStudents({ method, path }: Route): boolean {
  return method !== 'GET' && /^\/(?:api\/(?:students|links)|practice)\b/.test(path);
}

/** How answers are sent. */
export interface Sending {
  /** Whether the teacher's cookie travels encrypted only. */
  readonly isSafe: boolean;
  /** Told when something of a teacher's student changed. */
  readonly onChange: (teacher: string | null) => void;
  readonly journal: Journal;
  /** What the guard between teachers asks. */
  readonly guard: GuardParts;
}

/** What the journal is told of a route that answered. */
function deedOf(name: RouteName, asked: Journaled): Omit<JournalNote, 'teacher'> | null {
  const did = JOURNALED[name]?.(asked) ?? null;
  if (did === null) return null;
  const { whose }: Route = ROUTES[name];
  return { who: whose === 'link' ? 'student' : 'desk', did, student: studentIn(name, asked) };
}

/** The teacher who did something, or whose student did; null where nobody can say. */
async function teacherFor(
  { whose }: Route,
  { teacher, by, student }: Pick<Caller, 'teacher'> & { by: string | undefined; student: string | null },
  { owners }: GuardParts,
): Promise<string | null> {
  if (whose === 'link') return student === null ? null : owners.student(student);
  return by ?? teacher?.id ?? null;
}

/** Adds every route of the table. */
export function registerRoutes(
  app: FastifyInstance,
  handlers: Handlers,
  { isSafe, onChange, journal, guard }: Sending,
): void {
  app.addContentTypeParser('application/octet-stream', { parseAs: 'buffer' }, (_request, body, done) =>
    done(null, body),
  );
  for (const name of ROUTE_NAMES) {
    const route: Route = ROUTES[name];
    app.route({
      method: route.method,
      url: route.path,
      ...(route.mostBytes === undefined ? {} : { bodyLimit: route.mostBytes }),
      handler: async (request, reply) => {
        const reading = readRequest(route, request);
        if ('places' in reading)
          return sendRefusal(reply, refusal('bad-request', { places: reading.places }));
        const { params, query, body } = reading.asked as Omit<Journaled, 'answer'>;
        const caller = callerOf(request);
        const refused = await refusedTo(route, { params, query }, caller.teacher, guard);
        if (refused) return sendRefusal(reply, refused);
        const outcome = await handlers[name](reading.asked as never, whileWaiting(reply), caller);
        if (outcome.kind === 'refused') {
          if (outcome.refusal.code === 'wrong-passphrase')
            await journal.write({ who: 'somebody', did: 'sign-in-refused' });
          return sendRefusal(reply, outcome.refusal);
        }
        const asked = { params, query, body, answer: outcome.value, about: outcome.about };
        const note = deedOf(name, asked);
        const student = studentIn(name, asked);
        const teacher = await teacherFor(route, { ...caller, by: outcome.by, student }, guard);
        if (note) await journal.write({ ...note, teacher });
        if (changesStudents(route)) onChange(teacher);
        if (outcome.session !== undefined) sendSession(reply, outcome.session, isSafe);
        return sendAnswer(request, reply, route, outcome.value);
      },
    });
  }
}
