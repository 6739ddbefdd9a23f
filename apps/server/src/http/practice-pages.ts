/** The files of the pages that private links open, and a word where a link opens nothing. */
import { createHash } from 'node:crypto';
import { extname } from 'node:path';
import { mediumType } from '@shedbook/core';
import { LINK_WORKER, policyOf } from '@shedbook/pack/serving';
import { CLI, pickLanguage } from '@shedbook/words';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { LessonStore } from '../store/lessons.ts';
import { noteGivenOut } from '../store/names-in-use.ts';
import type { Door, Opening } from '../week/door.ts';
import type { PrivatePacks } from '../week/private-packs.ts';
import { lessonsSetFor } from '../week/students-week.ts';
import { languagesOf } from './languages-of.ts';
import { pagePolicy } from './page-policy.ts';
import { sendBytes } from './ranges.ts';

/** What the pages are served from. */
export interface PageParts {
  readonly door: Door;
  readonly store: LessonStore;
  readonly packs: PrivatePacks;
}

/** Media types of what a pack holds. Source: IANA media types. */
const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.pdf': 'application/pdf',
  '.mid': 'audio/midi',
  '.mp3': 'audio/mpeg',
  '.musicxml': 'application/vnd.recordare.musicxml+xml',
  '.yaml': 'text/yaml; charset=utf-8',
};

type Sentence = 'noSuchLink' | 'nothingSet' | 'lessonBroken' | 'tooOften';

/** A page that says one thing. */
function sayOn(
  request: FastifyRequest,
  reply: FastifyReply,
  status: number,
  sentence: Sentence,
): FastifyReply {
  const { words, tag } = CLI[pickLanguage(languagesOf(request))];
  const text = words.privateLink[sentence];
  const look = 'body{font:1.25rem/1.5 system-ui,sans-serif;max-width:32rem;margin:15vh auto;padding:0 1rem}';
  const head = `<!doctype html><html lang="${tag}"><meta charset="utf-8"><meta name="viewport" content="width=device-width">`;
  return reply
    .code(status)
    .type('text/html; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(
      `${head}<title>Shedbook</title><style>${look}</style><main><h1>Shedbook</h1><p>${text}</p></main></html>`,
    );
}

/** Sends a file, or word that the browser has it already. */
function sendFile(
  request: FastifyRequest,
  reply: FastifyReply,
  path: string,
  content: Uint8Array,
): FastifyReply {
  const tag = `"${createHash('sha256').update(content).digest('base64url').slice(0, 22)}"`;
  reply.header('etag', tag).header('cache-control', 'no-cache');
  if (request.headers['if-none-match'] === tag) return reply.code(304).send();
  reply.type(MEDIA_TYPES[extname(path)] ?? mediumType(path)?.type ?? 'application/octet-stream');
  return sendBytes(request, reply, content);
}

type Opened = Extract<Opening, { readonly kind: 'open' }>;

async function sendPage(
  request: FastifyRequest,
  reply: FastifyReply,
  { store, packs }: PageParts,
  { student, language }: Opened,
  rest: string,
): Promise<FastifyReply> {
  const lessons = await lessonsSetFor(student, store);
  const slash = rest.indexOf('/');
  const folder = slash < 0 ? '' : rest.slice(0, slash);
  const [first] = lessons;
  // Every lesson's pack has the worker of the link, which lies beside them.
  const isLinkWorker = rest === 'sw.js';
  const lesson = isLinkWorker ? first : lessons.find(({ id }) => id === folder);
  if (!lesson) {
    // The link itself, or a lesson that is no longer set: on to the first that is.
    if (!first) return sayOn(request, reply, 200, 'nothingSet');
    const { token } = request.params as { readonly token: string };
    return reply
      .header('cache-control', 'no-store')
      .redirect(`/practice/${token}/${encodeURIComponent(first.id)}/`);
  }
  const files = await packs.files(lesson, language);
  if (!files) return sayOn(request, reply, 422, 'lessonBroken');
  const path = isLinkWorker ? LINK_WORKER : rest.slice(slash + 1) || 'index.html';
  const content = files.get(path);
  if (!content) return reply.code(404).type('text/plain').send('');
  if (path === 'index.html') {
    reply.header('content-security-policy', pagePolicy(policyOf(Buffer.from(content).toString('utf8'))));
    await noteGivenOut(store, lesson);
  }
  return sendFile(request, reply, path, content);
}

/** Adds the pages. */
export function addPracticePages(app: FastifyInstance, parts: PageParts): void {
  app.get<{ Params: { readonly token: string } }>('/practice/:token', (request, reply) =>
    reply.redirect(`/practice/${encodeURIComponent(request.params.token)}/`),
  );
  app.get<{ Params: { readonly token: string; readonly '*': string } }>(
    '/practice/:token/*',
    async (request, reply) => {
      const opening = await parts.door(request.params.token, request.ip);
      if (opening.kind === 'open') return sendPage(request, reply, parts, opening, request.params['*']);
      const isTooOften = opening.refusal.code === 'too-often';
      return sayOn(request, reply, isTooOften ? 429 : 404, isTooOften ? 'tooOften' : 'noSuchLink');
    },
  );
}
