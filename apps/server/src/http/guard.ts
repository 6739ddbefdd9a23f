/**
 * Who may talk to the server: pages that it served itself. A page of another site could otherwise send requests
 * to a program on this computer, or point a name of its own at it.
 *
 * Source: WHATWG Fetch, the `Origin` header is sent with every request that is not GET or HEAD; W3C, Fetch Metadata
 * Request Headers, `Sec-Fetch-Site` with all of them. Links lead to a student's page and to the desk from anywhere, to
 * a route from nowhere.
 */
import { isIP } from 'node:net';
import { hostname as thisComputer } from 'node:os';
import type { FastifyRequest } from 'fastify';

const LOOPBACK: ReadonlySet<string> = new Set(['localhost', '127.0.0.1', '[::1]']);

/** The host name of a `Host` header or of an origin, or null when it has none. */
function hostnameOf(address: string): string | null {
  return URL.canParse(address) ? new URL(address).hostname : null;
}

/** Where the server is found. */
export interface Whereabouts {
  /** Host that it listens on. */
  readonly host: string;
  /** Address by which others reach it, e.g. through a program that stands before it; null where there is none. */
  readonly address: string | null;
}

/** Whether only this computer reaches an address. Source: RFC 6890: 127.0.0.0/8 and ::1. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(?:\.\d{1,3}){3}$/.test(host);
}

/**
 * Whether the server answers to a host name. One that listens everywhere answers to numbers and to the computer's own
 * name, never to a name that another site could point at it.
 */
function answersTo(hostname: string | null, { host, address }: Whereabouts): boolean {
  if (hostname === null) return false;
  if (LOOPBACK.has(hostname) || hostname === host || hostname === `[${host}]`) return true;
  if (address !== null && hostname === hostnameOf(address)) return true;
  const isEverywhere = host === '0.0.0.0' || host === '::';
  const isNumber = hostname.startsWith('[') || isIP(hostname) !== 0;
  const own = thisComputer().toLowerCase();
  return isEverywhere && (isNumber || hostname === own || hostname === `${own}.local`);
}

/** What a browser says of requests that this server's own pages or the reader's own hand made. */
const OWN_SITES: ReadonlySet<unknown> = new Set([undefined, 'same-origin', 'none']);

/** Whether a page of another site asks a route, be it by a picture or a form. */
function isFromElsewhere({ url, headers }: FastifyRequest): boolean {
  return url.startsWith('/api/') && !OWN_SITES.has(headers['sec-fetch-site']);
}

/** Whether a request comes from a page of this server. */
export function isOurs(request: FastifyRequest, where: Whereabouts): boolean {
  if (isFromElsewhere(request)) return false;
  const host = request.headers.host ?? '';
  if (!answersTo(hostnameOf(`http://${host}`), where)) return false;
  const { origin } = request.headers;
  const outside = where.address === null ? null : new URL(where.address).origin;
  return origin === undefined || origin === `http://${host}` || origin === outside;
}
