/** What a route is, and the types that follow from one. */
import type * as z from 'zod/mini';
import type { RefusalCode } from './refusal.ts';

/** Names of the places in a path: `id` and `step` of `/api/lessons/:id/steps/:step`. */
export type PlacesOf<Path extends string> = Path extends `${string}:${infer Name}/${infer Rest}`
  ? Name | PlacesOf<Rest>
  : Path extends `${string}:${infer Name}`
    ? Name
    : never;

/** What is sent back: JSON of a schema, a file to keep, word of what happens as long as somebody listens, or nothing. */
export type Answer =
  | { readonly kind: 'json'; readonly status: 200 | 201; readonly schema: z.ZodMiniType }
  | { readonly kind: 'file' }
  | { readonly kind: 'events' }
  | { readonly kind: 'nothing' };

/**
 * To whom a route answers, where there are several teachers:
 * `anybody`, signed in or not; `link` whoever has the private link in its path; `school` every teacher alike; `own`
 * every teacher with what is theirs; `head` a head; `student` the teacher of the student that `id` names, and
 * `student-of-link` the teacher of whoever has the link that it names: for everybody else there is no such thing;
 * `lesson`, `book` and `demonstration` whoever made what is named, and a head.
 */
export type Whose =
  | 'anybody'
  | 'link'
  | 'school'
  | 'own'
  | 'head'
  | 'student'
  | 'student-of-link'
  | 'lesson'
  | 'book'
  | 'demonstration';

/** One route of the server. */
export interface Route<Path extends string = string> {
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE';
  /** Places begin with a colon, each with its schema in `params`. */
  readonly path: Path;
  /** What it does, as a sentence without its full stop. */
  readonly does: string;
  readonly params: z.ZodMiniObject<Record<PlacesOf<Path>, z.ZodMiniType>>;
  readonly query: z.ZodMiniObject;
  /** A schema of JSON, `bytes` for a file as it is, null where nothing is sent. */
  readonly body: z.ZodMiniType | 'bytes' | null;
  readonly answer: Answer;
  /** Bytes that the body has at most, where that is not the server's usual limit. */
  readonly mostBytes?: number;
  readonly whose: Whose;
  /** Refusals of its own, beside those that any route has. */
  readonly refusals: readonly RefusalCode[];
}

/** Whether a route answers also where nobody has signed in; a secret in the path may still be asked for. */
export function isOpen({ whose }: Pick<Route, 'whose'>): boolean {
  return whose === 'anybody' || whose === 'link';
}

/** Holds a route to its own path: every place has a schema. */
export function route<const Path extends string, const Given extends Route<Path>>(
  given: Given & { readonly path: Path },
): Given {
  return given;
}

/** The body that is sent with a route. */
export type BodyOf<Given extends Route> = Given['body'] extends z.ZodMiniType
  ? z.output<Given['body']>
  : Given['body'] extends 'bytes'
    ? Uint8Array
    : null;

/** What a route is asked: the places of its path, its query, and its body. */
export interface AskedOf<Given extends Route> {
  readonly params: Readonly<z.output<Given['params']>>;
  readonly query: Readonly<z.output<Given['query']>>;
  readonly body: BodyOf<Given>;
}

/** A file that is sent: its name for the reader's disk, its media type, and what is in it. */
export interface SentFile {
  readonly name: string;
  readonly type: string;
  /** All of it, or bit by bit where it is long. */
  readonly content: Uint8Array | AsyncIterable<Uint8Array>;
}

/** What a route answers on the server. */
export type AnswerOf<Given extends Route> = Given['answer'] extends {
  readonly kind: 'json';
  readonly schema: infer Schema extends z.ZodMiniType;
}
  ? z.output<Schema>
  : Given['answer'] extends { readonly kind: 'file' }
    ? SentFile
    : Given['answer'] extends { readonly kind: 'events' }
      ? AsyncIterable<string>
      : null;

/** The address of a route with its places filled in, without a query. */
export function addressOf<Given extends Pick<Route, 'path'>>(
  { path }: Given,
  params: Readonly<Record<PlacesOf<Given['path']>, string | number>>,
): string {
  const values: Readonly<Record<string, string | number>> = params;
  return path.replaceAll(/:(\w+)/g, (_, name: string) => encodeURIComponent(values[name] ?? ''));
}
