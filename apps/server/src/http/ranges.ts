/**
 * Bytes that are sent whole, or in the part that a browser asks for: some play sound and video by parts alone.
 *
 * Source: RFC 9110, 14.1.2 (byte ranges) and 15.3.7 (206); several ranges at once are answered with everything (14.2).
 */
import type { FastifyReply, FastifyRequest } from 'fastify';

/** First and last byte that is asked for; null for everything. */
function rangeOf(header: string | undefined, size: number): readonly [number, number] | null {
  const [, from = '', to = ''] = /^bytes=(\d*)-(\d*)$/.exec(header ?? '') ?? [];
  if (from === '' && to === '') return null;
  if (from === '') return [Math.max(0, size - Number(to)), size - 1];
  return [Number(from), to === '' ? size - 1 : Math.min(Number(to), size - 1)];
}

/** Sends bytes, or the part of them that is asked for. */
export function sendBytes(request: FastifyRequest, reply: FastifyReply, content: Uint8Array): FastifyReply {
  const bytes = Buffer.from(content.buffer, content.byteOffset, content.byteLength);
  const range = rangeOf(request.headers.range, bytes.length);
  reply.header('accept-ranges', 'bytes');
  if (!range) return reply.send(bytes);
  const [from, to] = range;
  if (from > to) return reply.code(416).header('content-range', `bytes */${bytes.length}`).send();
  reply.code(206).header('content-range', `bytes ${from}-${to}/${bytes.length}`);
  return reply.send(bytes.subarray(from, to + 1));
}
