/** Routes of the students: list, create, save, remove and restore. */
import type { FastifyInstance } from 'fastify';
import type { SaveStudentRequest, StudentConflict } from '../contract.ts';
import type { StudentStore } from '../store/students.ts';
import { refuse } from './refuse.ts';

interface WithId {
  readonly id: string;
}

const name = { type: 'string', minLength: 1, maxLength: 200 } as const;
const log = { type: 'string', maxLength: 6_000_000 } as const;

const CREATE = {
  type: 'object',
  required: ['name'],
  additionalProperties: false,
  properties: { name },
} as const;

const ASSIGNMENT = {
  type: 'object',
  required: ['lesson', 'exercise', 'pinned', 'note'],
  additionalProperties: false,
  properties: {
    lesson: { type: 'string', maxLength: 200 },
    exercise: { type: 'string', maxLength: 10_000 },
    pinned: { type: 'boolean' },
    note: { type: ['string', 'null'], maxLength: 2_000 },
  },
} as const;

const SAVE = {
  type: 'object',
  required: ['name', 'log', 'assignments', 'revision'],
  additionalProperties: false,
  properties: {
    name,
    log,
    assignments: { type: 'array', items: ASSIGNMENT, maxItems: 500 },
    revision: { type: 'integer' },
  },
} as const;

const NO_STUDENT = 'There is no such student; they may have been removed in another window.';

/** Adds the routes that change students and read them. */
export function addStudentRoutes(app: FastifyInstance, store: StudentStore): void {
  app.get('/api/students', () => store.list());

  app.post<{ Body: { readonly name: string } }>(
    '/api/students',
    { schema: { body: CREATE } },
    async (request, reply) => reply.code(201).send(await store.create(request.body.name)),
  );

  app.put<{ Params: WithId; Body: SaveStudentRequest }>(
    '/api/students/:id',
    { schema: { body: SAVE } },
    async (request, reply) => {
      const outcome = await store.save(request.params.id, request.body);
      if (outcome.kind === 'saved') return outcome.student;
      if (outcome.kind === 'missing') return refuse(reply, 'no-such-student', NO_STUDENT);
      const message = `${outcome.kept.name} was changed elsewhere: revision ${outcome.kept.revision} is kept, this change was made from ${request.body.revision}.`;
      const conflict: StudentConflict = { code: 'conflict', message, kept: outcome.kept };
      return reply.code(409).send(conflict);
    },
  );

  app.delete<{ Params: WithId }>('/api/students/:id', async (request, reply) => {
    const found = await store.remove(request.params.id);
    return found ? reply.code(204).send() : refuse(reply, 'no-such-student', NO_STUDENT);
  });

  app.post<{ Params: WithId }>('/api/students/:id/restore', async (request, reply) => {
    const student = await store.restore(request.params.id);
    return student ?? refuse(reply, 'no-such-student', NO_STUDENT);
  });
}
