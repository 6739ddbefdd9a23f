/**
 * A bucket of an S3-compatible store: files under names, and no more of that protocol than this takes.
 *
 * Conventions: addresses are `https://HOST/BUCKET` or `https://HOST/BUCKET/FOLDER`, as every such store understands them;
 * who asks is said by the usual settings, `AWS_ACCESS_KEY_ID` and `AWS_SECRET_ACCESS_KEY`, and nothing secret is told.
 * Source: Amazon S3 API Reference, 2006-03-01: PutObject, GetObject, DeleteObject, ListObjectsV2, error responses.
 */
import { createHash } from 'node:crypto';
import { AwsClient } from 'aws4fetch';
import { TAKES_SETTING } from '../place.ts';
import { type BucketFault, TakesAwayError } from './takes-away.ts';

/** A file of a bucket. */
export interface BucketFile {
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly writtenAt: number;
}

/** A folder of a bucket. */
export interface Bucket {
  /** Writes one; it is kept when this is done. @returns whether the bucket keeps what was there before as well */
  put(name: string, content: Uint8Array): Promise<boolean>;
  /** Null where it is not there. */
  get(name: string): Promise<Uint8Array | null>;
  /** Deletes one, where it is there. */
  remove(name: string): Promise<void>;
  /** All files. */
  list(): Promise<readonly BucketFile[]>;
}

/** Milliseconds that one question takes at most: a take of 64 MB over a slow line. */
const PATIENCE_MS = 120_000;

/** Times that a question is asked again where the store is busy. */
const AGAIN = 3;

/** Where a bucket is. */
interface Whereabouts {
  readonly origin: string;
  readonly bucket: string;
  /** Beginning of every name, with a slash at its end; empty for none. */
  readonly folder: string;
  readonly region: string;
}

function whereaboutsOf(address: string, region: string | undefined): Whereabouts | null {
  const url = URL.canParse(address) ? new URL(address) : null;
  if (!url || !/^https?:$/.test(url.protocol) || url.search !== '' || url.username !== '') return null;
  const [bucket = '', ...folders] = url.pathname.split('/').filter((part) => part !== '');
  if (bucket === '') return null;
  const folder = folders.map((part) => `${part}/`).join('');
  // Amazon's own addresses name it: s3.eu-central-1.amazonaws.com
  const named = /^s3[.-]([a-z0-9-]+)\.amazonaws\.com/.exec(url.hostname)?.[1];
  return { origin: url.origin, bucket, folder, region: region ?? named ?? 'us-east-1' };
}

/** Where a bucket is, to be told: its address without whatever secret is in it. */
export function shownBucket(address: string): string {
  const where = whereaboutsOf(address, undefined);
  return where ? `${where.origin}/${where.bucket}/${where.folder}`.replace(/\/$/, '') : TAKES_SETTING;
}

/** The text of an element in an answer. @param from where the first one is looked for */
function textIn(xml: string, element: string): string | null {
  const found = new RegExp(`<${element}>([^<]*)</${element}>`).exec(xml)?.[1];
  const signs: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' };
  return found?.replace(/&(lt|gt|quot|apos|amp);/g, (_all, sign: string) => signs[sign] ?? '') ?? null;
}

/** What is wrong where a store said no. */
function faultOf(status: number, code: string | null): BucketFault {
  if (code === 'NoSuchBucket' || (status === 404 && code === null)) return 'noBucket';
  if (status === 401 || status === 403 || code === 'InvalidAccessKeyId') return 'noEntry';
  return 'away';
}

/** Opens a bucket; it is not asked yet. @throws TakesAwayError where the address is none, or it is not said who asks */
export function openBucket(address: string, env: NodeJS.ProcessEnv): Bucket {
  const where = whereaboutsOf(address, env['AWS_REGION']);
  const tell = (fault: BucketFault, reason = '') => new TakesAwayError(fault, shownBucket(address), reason);
  if (!where) throw tell('noAddress');
  const { AWS_ACCESS_KEY_ID: accessKeyId, AWS_SECRET_ACCESS_KEY: secretAccessKey, AWS_SESSION_TOKEN } = env;
  if (!accessKeyId || !secretAccessKey) throw tell('noKeys');
  const client = new AwsClient({
    ...{ accessKeyId, secretAccessKey, service: 's3', region: where.region, retries: AGAIN },
    ...(AWS_SESSION_TOKEN ? { sessionToken: AWS_SESSION_TOKEN } : {}),
  });
  const root = `${where.origin}/${where.bucket}`;
  const ask = async (method: string, url: string, content?: Uint8Array): Promise<Response> => {
    const sum = createHash('sha256')
      .update(content ?? new Uint8Array())
      .digest('hex');
    const headers = { 'x-amz-content-sha256': sum };
    const body = content === undefined ? {} : { body: new Uint8Array(content) };
    try {
      return await client.fetch(url, { method, headers, ...body, signal: AbortSignal.timeout(PATIENCE_MS) });
    } catch (error) {
      const { cause } = error as { readonly cause?: { readonly code?: string } };
      throw tell('away', cause?.code ?? (error as Error).name);
    }
  };
  const refuse = async (response: Response): Promise<never> => {
    const code = textIn(await response.text(), 'Code');
    throw tell(faultOf(response.status, code), code ?? `${response.status}`);
  };
  const urlOf = (name: string) => `${root}/${where.folder}${name}`;
  const page = async (after: string | null): Promise<string> => {
    const query = new URLSearchParams({ 'list-type': '2', prefix: where.folder });
    if (after !== null) query.set('continuation-token', after);
    const response = await ask('GET', `${root}?${query}`);
    return response.ok ? response.text() : refuse(response);
  };
  return {
    put: async (name, content) => {
      const response = await ask('PUT', urlOf(name), content);
      if (!response.ok) return refuse(response);
      // a bucket that keeps what was there before names what it has written
      return ![null, 'null'].includes(response.headers.get('x-amz-version-id'));
    },
    get: async (name) => {
      const response = await ask('GET', urlOf(name));
      if (response.ok) return new Uint8Array(await response.arrayBuffer());
      const code = response.status === 404 ? textIn(await response.clone().text(), 'Code') : null;
      return code === 'NoSuchKey' ? null : refuse(response);
    },
    remove: async (name) => {
      const response = await ask('DELETE', urlOf(name));
      if (!response.ok && response.status !== 404) await refuse(response);
    },
    list: async () => {
      const files: BucketFile[] = [];
      for (let after: string | null = null; ; ) {
        const xml: string = await page(after);
        for (const [each] of xml.matchAll(/<Contents>[\s\S]*?<\/Contents>/g)) {
          const key = textIn(each, 'Key') ?? '';
          const writtenAt = Date.parse(textIn(each, 'LastModified') ?? '');
          if (key.startsWith(where.folder)) files.push({ name: key.slice(where.folder.length), writtenAt });
        }
        after = textIn(xml, 'IsTruncated') === 'true' ? textIn(xml, 'NextContinuationToken') : null;
        if (after === null) return files;
      }
    },
  };
}
