/** What answers each route: as many as the table has, no more and no fewer. */
import {
  type AnswerOf,
  type AskedOf,
  type CodeOf,
  type Refusal,
  type RefusalCode,
  type RefusalValues,
  type RouteName,
  type RouteNamed,
  refusal,
  type Teacher,
} from '@shedbook/routes';

/** Who asks. */
export interface Caller {
  /** Where the request came from. */
  readonly ip: string;
  /** The secret in the teacher's cookie; null where there is none. */
  readonly session: string | null;
  /** Who signed in; the first teacher where nobody has to. Null where nobody did, which only open routes meet. */
  readonly teacher: Teacher | null;
}

/** The teacher who asks a route that is not open. */
export function teacherOf({ teacher }: Caller): Teacher {
  if (!teacher) throw new Error('Internal error: a teacher was asked for where nobody has signed in');
  return teacher;
}

/** What became of a request. */
export type Outcome<Name extends RouteName> =
  | {
      readonly kind: 'answer';
      readonly value: AnswerOf<RouteNamed<Name>>;
      /** The secret that goes into the teacher's cookie, null to take it away; untouched where left out. */
      readonly session?: string | null;
      /** The student whom it is about, where neither the question nor the answer says so. */
      readonly about?: string;
      /** The teacher who did it, where nobody had signed in before. */
      readonly by?: string;
    }
  | { readonly kind: 'refused'; readonly refusal: Refusal<CodeOf<Name>> };

/** Answers every route of the table; the signal is aborted when nobody waits for the answer any more. */
export type Handlers = {
  readonly [Name in RouteName]: (
    asked: AskedOf<RouteNamed<Name>>,
    signal: AbortSignal,
    caller: Caller,
  ) => Promise<Outcome<Name>>;
};

/** An answer. */
export function answer<Value>(value: Value): { readonly kind: 'answer'; readonly value: Value } {
  return { kind: 'answer', value };
}

/** No, with what the desk needs to say why. */
export function refuse<Code extends RefusalCode>(
  code: Code,
  values: RefusalValues<Code>,
): { readonly kind: 'refused'; readonly refusal: Refusal<Code> } {
  return { kind: 'refused', refusal: refusal(code, values) };
}
