/** Who asks: found once, as a request comes in, and there for whoever answers it. */
import type { Teacher } from '@shedbook/routes';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { visitorOf } from './cookie.ts';
import type { Caller } from './handlers.ts';

const TEACHER = 'teacher';

/** Has every request say who asks. */
export function addCaller(app: FastifyInstance): void {
  app.decorateRequest(TEACHER, null);
}

/** Notes who asks. */
export function noteCaller(request: FastifyRequest, teacher: Teacher | null): void {
  request.setDecorator<Teacher | null>(TEACHER, teacher);
}

/** Who asks. */
export function callerOf(request: FastifyRequest): Caller {
  return { ...visitorOf(request), teacher: request.getDecorator<Teacher | null>(TEACHER) };
}
