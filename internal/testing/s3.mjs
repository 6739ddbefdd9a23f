/**
 * An S3-compatible store for tests: a server of their own on loopback, with one bucket, gone when they end.
 *
 * Conventions: s3rver keeps and tells files in S3's own XML but looks at no signature of version 4, so each is compared
 * with what another library signs first.
 * Source: s3rver 3.7.1; aws4 1.13 (AWS Signature Version 4).
 */
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import aws4 from 'aws4';
import S3rver from 's3rver';

/** Keys that it knows. */
export const S3_KEYS = { AWS_ACCESS_KEY_ID: 'S3RVER', AWS_SECRET_ACCESS_KEY: 'S3RVER' };

/** Whether a request is signed with the keys. @param {import('node:http').IncomingMessage} request */
function isSigned({ method, url: path, headers }) {
  const authorization = headers.authorization ?? '';
  const [, names = ''] = /SignedHeaders=([^,]+)/.exec(authorization) ?? [];
  const [, region = ''] = /Credential=[^/]+\/\d+\/([^/]+)/.exec(authorization) ?? [];
  const signed = Object.fromEntries(names.split(';').map((name) => [name, `${headers[name]}`]));
  const keys = { accessKeyId: S3_KEYS.AWS_ACCESS_KEY_ID, secretAccessKey: S3_KEYS.AWS_SECRET_ACCESS_KEY };
  const again = aws4.sign({ method, path, service: 's3', region, headers: signed }, keys);
  const signatureOf = (/** @type {string} */ text) => /Signature=(\w+)/.exec(text)?.[1];
  return signatureOf(authorization) === signatureOf(`${again.headers?.Authorization}`);
}

/** @param {import('node:http').ServerResponse} response @param {number} status @param {string} code */
function refuse(response, status, code) {
  response.writeHead(status, { 'content-type': 'application/xml' });
  response.end(`<?xml version="1.0" encoding="UTF-8"?>\n<Error><Code>${code}</Code></Error>`);
}

/** Files of a list that are told at once; of S3 a thousand are. */
const PART = 2;

/**
 * Has a list come in parts, as S3 tells long ones; s3rver itself does so by a cipher that Node no longer has.
 * Standard: S3, ListObjectsV2: where there is more, `IsTruncated` and a token that means nothing to whoever asks.
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
function tellInParts(request, response) {
  const url = new URL(`${request.url}`, 'http://localhost');
  const from = Number(atob(url.searchParams.get('continuation-token') ?? ''));
  url.searchParams.delete('continuation-token');
  request.url = `${url.pathname}${url.search}`;
  const end = response.end.bind(response);
  response.end = (/** @type {unknown} */ body) => {
    const all = [...`${body}`.matchAll(/<Contents>[\s\S]*?<\/Contents>/g)].map(([each]) => each);
    const isMore = all.length > from + PART;
    const token = `<NextContinuationToken>${btoa(`${from + PART}`)}</NextContinuationToken>`;
    const part = all
      .reduce((text, each, n) => (n >= from && n < from + PART ? text : text.replace(each, '')), `${body}`)
      .replace(
        '<IsTruncated>false</IsTruncated>',
        `<IsTruncated>${isMore}</IsTruncated>${isMore ? token : ''}`,
      );
    response.setHeader('content-length', Buffer.byteLength(part));
    return end(part);
  };
}

/**
 * A store that runs.
 * @typedef {object} RunningS3
 * @property {string} origin
 * @property {string} bucket its address
 * @property {string} folder where its files lie
 * @property {(versions: boolean) => void} keepVersions whether it says that it keeps earlier versions
 * @property {(away: boolean) => void} goAway whether it says that it cannot answer now
 * @property {() => Promise<void>} stop
 */

/** Starts one. @returns {Promise<RunningS3>} */
export async function startS3() {
  const directory = mkdtempSync(join(tmpdir(), 'shedbook-s3-'));
  const s3 = new S3rver({ silent: true, directory, configureBuckets: [{ name: 'takes', configs: [] }] });
  await s3.configureBuckets();
  const answer = s3.callback();
  let [hasVersions, isAway] = [false, false];
  const server = createServer((request, response) => {
    if (isAway) return refuse(response, 503, 'SlowDown');
    if (!isSigned(request)) return refuse(response, 403, 'SignatureDoesNotMatch');
    // standard: S3, PutObject: the header stands in answers of buckets with versions
    if (hasVersions) response.setHeader('x-amz-version-id', '3HL4kqtJlcpXroDTDmJrmSpXd3dIbrHY');
    if (request.url?.includes('list-type=2')) tellInParts(request, response);
    return answer(request, response);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = /** @type {import('node:net').AddressInfo} */ (server.address());
  const origin = `http://127.0.0.1:${port}`;
  return {
    ...{ origin, bucket: `${origin}/takes`, folder: join(directory, 'takes') },
    keepVersions: (versions) => {
      hasVersions = versions;
    },
    goAway: (away) => {
      isAway = away;
    },
    stop: async () => {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
      rmSync(directory, { recursive: true, force: true });
    },
  };
}
