/**
 * The teacher's cookie: it says that the passphrase was given in this browser.
 *
 * Source: RFC 6265 and its revision (draft-ietf-httpbis-rfc6265bis): `HttpOnly`, so that no script reads it;
 * `SameSite=Strict`, so that no page of another site sends it along; `Secure` where the desk is reached encrypted.
 */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { SESSION_SECONDS } from '../store/sign-in.ts';
import type { Caller } from './handlers.ts';

const NAME = 'shedbook';

/** From where somebody asks, and with which cookie. */
export function visitorOf({ ip, headers }: FastifyRequest): Omit<Caller, 'teacher'> {
  const pairs = (headers.cookie ?? '').split(';').map((each) => each.trim().split('='));
  return { ip, session: pairs.find(([name]) => name === NAME)?.[1] ?? null };
}

/** Gives the browser the cookie, or takes it away. */
export function sendSession(reply: FastifyReply, token: string | null, isSafe: boolean): void {
  const age = token === null ? 0 : SESSION_SECONDS;
  const safe = isSafe ? '; Secure' : '';
  reply.header(
    'set-cookie',
    `${NAME}=${token ?? ''}; Path=/; Max-Age=${age}; HttpOnly; SameSite=Strict${safe}`,
  );
}
