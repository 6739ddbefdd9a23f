/** In which language to answer where no page says it. */
import type { FastifyRequest } from 'fastify';

/** The languages that whoever asks reads, the dearest first. Source: RFC 9110, section 12.5.4, weights left aside. */
export function languagesOf({ headers }: Pick<FastifyRequest, 'headers'>): readonly string[] {
  const wanted = headers['accept-language'] ?? '';
  return wanted.split(',').map((each) => each.replace(/;.*/, '').trim());
}
