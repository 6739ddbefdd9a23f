/** Refusals: a code for the desk, a sentence for people, never a stack trace. */
import type { FastifyReply } from 'fastify';
import type { Refusal, RefusalCode } from '../contract.ts';

const STATUS: Readonly<Record<RefusalCode, number>> = {
  'no-such-lesson': 404,
  'no-such-step': 404,
  'no-such-student': 404,
  'bad-request': 400,
  'too-large': 413,
  'foreign-origin': 403,
  'unreadable-file': 422,
  'lesson-has-errors': 422,
  internal: 500,
};

/** Sends a refusal. */
export function refuse(reply: FastifyReply, code: RefusalCode, message: string): FastifyReply {
  const body: Refusal = { code, message };
  return reply.code(STATUS[code]).send(body);
}
