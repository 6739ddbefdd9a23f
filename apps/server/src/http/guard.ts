/**
 * Who may talk to the server: pages that it served itself. A page of another site could otherwise send requests
 * to a program on this computer, or point a name of its own at it.
 *
 * Source: WHATWG Fetch, the `Origin` header is sent with every request that is not GET or HEAD.
 */
import type { FastifyRequest } from 'fastify';

const LOOPBACK: ReadonlySet<string> = new Set(['localhost', '127.0.0.1', '[::1]']);

/** The host name of a `Host` header or of an origin, or null when it has none. */
function hostnameOf(address: string): string | null {
  return URL.canParse(address) ? new URL(address).hostname : null;
}

/** Whether a server that listens on `listening` answers to a host name. */
function answersTo(hostname: string | null, listening: string): boolean {
  if (hostname === null) return false;
  return LOOPBACK.has(hostname) || hostname === listening || hostname === `[${listening}]`;
}

/** Whether only this computer reaches an address. Source: RFC 6890: 127.0.0.0/8 and ::1. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(?:\.\d{1,3}){3}$/.test(host);
}

/** Whether a request comes from a page of this server, which listens on `listening`. */
export function isOurs(request: FastifyRequest, listening: string): boolean {
  const host = request.headers.host ?? '';
  if (!answersTo(hostnameOf(`http://${host}`), listening)) return false;
  const origin = request.headers.origin;
  return origin === undefined || origin === `http://${host}`;
}
