/**
 * What our pages may load: their own files and nothing of anybody else's, whatever a host or a text may add to them.
 *
 * Source: W3C Content Security Policy Level 3.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { base64 } from '@scure/base';
import { strToU8 } from 'fflate';

/** The directives of every page, one by one. */
export const CONTENT_POLICY: readonly string[] = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  // the encoders of sound bring their program along as an address of data
  "connect-src 'self' data:",
  "base-uri 'none'",
];

/** A hash source of a script that stands in a page. */
function hashSource(code: string): string {
  return `'sha256-${base64.encode(sha256(strToU8(code)))}'`;
}

/** The directives of a page with scripts of its own in it, each named by its sum. */
export function policyOf(html: string): readonly string[] {
  const sums = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, code = '']) => hashSource(code));
  return CONTENT_POLICY.map((each) =>
    each.startsWith('script-src') && sums.length > 0 ? `${each} ${sums.join(' ')}` : each,
  );
}
