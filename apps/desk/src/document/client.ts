/** Asking the server: any route of the table, checked against its schemas on the way back. */
import {
  type AnswerOf,
  type AskedOf,
  addressOf,
  type Refusal,
  type RefusalCode,
  ROUTES,
  type Route,
  type RouteName,
  type RouteNamed,
  readRefusal,
  refusal,
  type SentFile,
} from '@shedbook/routes';

import { askedToSignIn } from './asked-to-sign-in.ts';

/** The server said no. */
export class RefusedError extends Error {
  override readonly name = 'RefusedError';
  readonly refusal: Refusal;

  constructor(refused: Refusal) {
    super(refused.code);
    this.refusal = refused;
  }

  get code(): RefusalCode {
    return this.refusal.code;
  }
}

/** The server could not be reached at all. */
export class UnreachableError extends Error {
  override readonly name = 'UnreachableError';
}

/** A file that came, and its name. */
export interface ReceivedFile {
  readonly file: Blob;
  readonly name: string;
}

/** A part of a request; it may be left out where nothing goes into it. */
type Part<Key extends string, Value> =
  Value extends Readonly<Record<string, never>>
    ? { readonly [Each in Key]?: Value }
    : { readonly [Each in Key]: Value };

type Body<Value> = Value extends null
  ? { readonly body?: null }
  : { readonly body: Value extends Uint8Array ? Blob : Value };

/** What is asked with a route. */
export type Asking<Name extends RouteName> = Part<'params', AskedOf<RouteNamed<Name>>['params']> &
  Part<'query', AskedOf<RouteNamed<Name>>['query']> &
  Body<AskedOf<RouteNamed<Name>>['body']>;

/** What comes back from a route. */
export type Received<Name extends RouteName> =
  AnswerOf<RouteNamed<Name>> extends SentFile ? ReceivedFile : AnswerOf<RouteNamed<Name>>;

interface AnyAsking {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}

function initOf({ method, body: kind }: Route, body: unknown): RequestInit {
  if (kind === null) return { method };
  if (kind === 'bytes')
    return { method, body: body as Blob, headers: { 'content-type': 'application/octet-stream' } };
  return { method, body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
}

async function refusalOf(response: Response): Promise<Refusal> {
  return readRefusal(await response.json().catch(() => null)) ?? refusal('internal', {});
}

async function receive({ answer }: Route, response: Response): Promise<unknown> {
  if (answer.kind === 'json') return answer.schema.parse(await response.json());
  if (answer.kind === 'nothing') return null;
  if (answer.kind === 'events') throw new RangeError('Internal error: events are listened to, not asked for');
  const [, name = 'file'] =
    /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '') ?? [];
  return { file: await response.blob(), name };
}

/**
 * Asks the server.
 * @throws RefusedError when it says no, UnreachableError when it does not answer.
 */
export async function ask<Name extends RouteName>(name: Name, asking: Asking<Name>): Promise<Received<Name>> {
  const route: Route = ROUTES[name];
  const { params = {}, query = {}, body } = asking as AnyAsking;
  const asked = new URLSearchParams(query).toString();
  const address = addressOf(route, params) + (asked === '' ? '' : `?${asked}`);
  const response = await fetch(address, initOf(route, body)).catch(() => {
    throw new UnreachableError(address);
  });
  if (!response.ok) {
    const refused = await refusalOf(response);
    if (refused.code === 'sign-in-first') askedToSignIn();
    throw new RefusedError(refused);
  }
  return (await receive(route, response)) as Received<Name>;
}
