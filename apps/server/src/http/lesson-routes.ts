/** Routes of the lessons: list, read, create, save, history, remove and restore. */
import type { FastifyInstance } from 'fastify';
import type { Conflict, CreateRequest, SaveRequest } from '../contract.ts';
import type { SheetMaker } from '../sheet/sheet-maker.ts';
import type { LessonStore } from '../store/lessons.ts';
import { refuse } from './refuse.ts';

interface WithId {
  readonly id: string;
}

const text = { type: 'string', maxLength: 1_000_000 } as const;

const CREATE = {
  type: 'object',
  required: ['text'],
  additionalProperties: false,
  properties: { text },
} as const;

const SAVE = {
  type: 'object',
  required: ['text', 'revision', 'cause'],
  additionalProperties: false,
  properties: { text, revision: { type: 'integer' }, cause: { enum: ['edit', 'undo', 'redo'] } },
} as const;

const NO_LESSON = 'There is no such lesson; it may have been deleted in another window.';

/** Adds the routes that change lessons and read them. */
export function addLessonRoutes(app: FastifyInstance, store: LessonStore, sheets: SheetMaker): void {
  app.get('/api/lessons', () => store.list());

  app.post<{ Body: CreateRequest }>('/api/lessons', { schema: { body: CREATE } }, async (request, reply) =>
    reply.code(201).send(await store.create(request.body.text)),
  );

  app.get<{ Params: WithId }>('/api/lessons/:id', async (request, reply) => {
    sheets.warm();
    const lesson = await store.read(request.params.id);
    return lesson ?? refuse(reply, 'no-such-lesson', NO_LESSON);
  });

  app.put<{ Params: WithId; Body: SaveRequest }>(
    '/api/lessons/:id',
    { schema: { body: SAVE } },
    async (request, reply) => {
      const outcome = await store.save(request.params.id, request.body);
      if (outcome.kind === 'saved') return outcome.lesson;
      if (outcome.kind === 'missing') return refuse(reply, 'no-such-lesson', NO_LESSON);
      const message = `The lesson was changed elsewhere: revision ${outcome.kept.revision} is kept, this change was made from ${request.body.revision}.`;
      const conflict: Conflict = { code: 'conflict', message, kept: outcome.kept };
      return reply.code(409).send(conflict);
    },
  );

  app.get<{ Params: WithId & { readonly step: string } }>(
    '/api/lessons/:id/steps/:step',
    async (request, reply) => {
      const step = await store.readStep(request.params.id, Number(request.params.step));
      return step ?? refuse(reply, 'no-such-step', 'The history of this lesson does not reach that far.');
    },
  );

  app.delete<{ Params: WithId }>('/api/lessons/:id', async (request, reply) => {
    const found = await store.remove(request.params.id);
    return found ? reply.code(204).send() : refuse(reply, 'no-such-lesson', NO_LESSON);
  });

  app.post<{ Params: WithId }>('/api/lessons/:id/restore', async (request, reply) => {
    const lesson = await store.restore(request.params.id);
    return lesson ?? refuse(reply, 'no-such-lesson', NO_LESSON);
  });
}
