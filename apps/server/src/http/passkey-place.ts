/**
 * For which address passkeys hold: the one that the server was told others reach it by.
 *
 * Source: W3C, Web Authentication, Level 2, section 5.1.3: the id of a relying party is a domain, and no number; its pages
 * come encrypted, or from `localhost`.
 */
import type { Whereabouts } from './guard.ts';

/** What passkeys hold for. */
export interface PasskeyPlace {
  readonly rpID: string;
  readonly origin: string;
}

/** What passkeys hold for at an address; null where browsers make none. */
export function passkeyPlace({ address }: Whereabouts): PasskeyPlace | null {
  if (address === null) return null;
  const { protocol, hostname, origin } = new URL(address);
  const isDomain = !/^\[|^[\d.]+$/.test(hostname);
  const isSafe = protocol === 'https:' || hostname === 'localhost';
  return isDomain && isSafe ? { rpID: hostname, origin } : null;
}
