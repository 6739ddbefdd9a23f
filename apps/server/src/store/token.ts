/**
 * Secrets that open something: the one in a student's private link, and the one in a teacher's cookie.
 *
 * Conventions: 256 random bits, written as base64url (RFC 4648, section 5). Only their SHA-256 is kept: whoever reads
 * the store learns none of them, and a secret with that many bits needs no slow digest (NIST SP 800-63B, section
 * 5.1.2.2, asks for that below 112 bits).
 */
import { createHash, randomBytes } from 'node:crypto';

const TOKEN_BYTES = 32;

/** A new secret: 43 characters that need no escaping in an address or a cookie. */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url');
}

/** What is kept of a secret. */
export function digestOf(token: string): string {
  return createHash('sha256').update(token).digest('base64url');
}
