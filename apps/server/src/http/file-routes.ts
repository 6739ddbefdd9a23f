/** Routes of files: sheets as pictures and as PDF, standard files out and in. */
import { parseLesson } from '@shedbook/core';
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { StoredLesson } from '../contract.ts';
import { EXPORT_FACTS, type ExportFormat, exportLesson } from '../files/export-lesson.ts';
import { fileNameOfText } from '../files/file-name.ts';
import { importLesson } from '../files/import-lesson.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import { refuse } from './refuse.ts';

interface WithId {
  readonly id: string;
}

function attach(reply: FastifyReply, name: string, type: string): FastifyReply {
  return reply.type(type).header('content-disposition', `attachment; filename="${name}"`);
}

function refuseMissing(reply: FastifyReply): FastifyReply {
  return refuse(reply, 'no-such-lesson', 'There is no such lesson.');
}

function refuseErrors(reply: FastifyReply): FastifyReply {
  return refuse(reply, 'lesson-has-errors', 'The text of the lesson has problems; mend them first.');
}

function addSheetRoutes(app: FastifyInstance, store: LessonStore, sheets: SheetMaker): void {
  app.get<{ Params: WithId }>('/api/lessons/:id/pages', async (request, reply) => {
    const stored = await store.read(request.params.id);
    if (!stored) return refuseMissing(reply);
    const pages = await sheets.pages(stored.text);
    return pages ? { revision: stored.revision, pages } : refuseErrors(reply);
  });

  app.get<{ Params: WithId }>('/api/lessons/:id/sheet.pdf', async (request, reply) => {
    const stored = await store.read(request.params.id);
    if (!stored) return refuseMissing(reply);
    const bytes = await sheets.pdf(stored.text);
    if (!bytes) return refuseErrors(reply);
    return attach(reply, fileNameOfText(stored.text, '.pdf'), 'application/pdf').send(Buffer.from(bytes));
  });
}

function addPackRoute(app: FastifyInstance, store: LessonStore, packs: SheetMaker): void {
  app.get<{ Params: WithId }>('/api/lessons/:id/practice.zip', async (request, reply) => {
    const stored = await store.read(request.params.id);
    if (!stored) return refuseMissing(reply);
    const bytes = await packs.pack(stored.text, stored.id);
    if (!bytes) return refuseErrors(reply);
    return attach(reply, fileNameOfText(stored.text, '.zip'), 'application/zip').send(Buffer.from(bytes));
  });
}

function sendExport(reply: FastifyReply, stored: StoredLesson, format: ExportFormat): FastifyReply {
  const { lesson } = parseLesson(stored.text, 'lesson');
  if (!lesson) return refuseErrors(reply);
  const { ending, type } = EXPORT_FACTS[format];
  const content = exportLesson(lesson, format);
  const body = typeof content === 'string' ? content : Buffer.from(content);
  return attach(reply, fileNameOfText(stored.text, ending), type).send(body);
}

function addExchangeRoutes(app: FastifyInstance, store: LessonStore): void {
  app.get<{ Params: WithId & { readonly format: string } }>(
    '/api/lessons/:id/export/:format',
    async (request, reply) => {
      const { id, format } = request.params;
      if (format !== 'musicxml' && format !== 'midi') {
        return refuse(reply, 'bad-request', `Found format "${format}"; expected musicxml or midi.`);
      }
      const stored = await store.read(id);
      return stored ? sendExport(reply, stored, format) : refuseMissing(reply);
    },
  );

  app.post<{ Querystring: { readonly name?: string }; Body: Buffer }>(
    '/api/import',
    async (request, reply) => {
      const outcome = importLesson(request.body, request.query.name ?? 'lesson');
      if (outcome.kind === 'refused') return refuse(reply, 'unreadable-file', outcome.message);
      return reply.code(201).send(await store.create(outcome.text));
    },
  );
}

/** What files are made with. */
interface FileParts {
  readonly store: LessonStore;
  readonly sheets: SheetMaker;
  readonly packs: SheetMaker;
}

/** Adds the routes of files. */
export function addFileRoutes(app: FastifyInstance, { store, sheets, packs }: FileParts): void {
  app.addContentTypeParser('application/octet-stream', { parseAs: 'buffer' }, (_request, body, done) =>
    done(null, body),
  );
  addSheetRoutes(app, store, sheets);
  addPackRoute(app, store, packs);
  addExchangeRoutes(app, store);
}
