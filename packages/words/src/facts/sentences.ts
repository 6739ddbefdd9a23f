/** Sentences beside the facts they are of, compared by the compiler. */
import type { Fact } from '@shedbook/core';
import type { Kinds } from '../message/kinds.ts';
import type { KindOf, PlaceNames } from '../message/places.ts';

/** A sentence or clause for each kind of fact. */
export type Sentences<F extends Fact> = { readonly [Kind in F['fact']]: string };

type Fits<F extends Fact, Message extends string, One> = {
  readonly [Name in PlaceNames<Message>]: Name extends keyof One
    ? KindOf<Message, Name> extends keyof Kinds<F>
      ? One[Name] extends Kinds<F>[KindOf<Message, Name>]
        ? never
        : `${Name} is of another kind`
      : `no kind of value: ${KindOf<Message, Name>}`
    : `the fact has no ${Name}`;
}[PlaceNames<Message>];

/** The kinds of facts that bear a code; one interface may bear several. */
type OfKind<F extends Fact, Kind> = F extends Fact ? (Kind extends F['fact'] ? F : never) : never;

type Fault<F extends Fact, Within extends Fact, Kind, Message> = Message extends string
  ? Fits<F | Within, Message, OfKind<F, Kind>>
  : 'a sentence is a text';

type Checked<F extends Fact, Within extends Fact, S> = {
  readonly [Kind in keyof S]: Kind extends F['fact']
    ? [Fault<F, Within, Kind, S[Kind]>] extends [never]
      ? S[Kind]
      : Fault<F, Within, Kind, S[Kind]>
    : never;
};

/**
 * Takes the sentences of a language for facts `F`, which may hold facts of `Within` too. A fact without a sentence, a sentence without a fact, and a place
 * that the fact has no fitting value for do not compile.
 * For example: sentences<{ readonly fact: 'too-many'; readonly most: number }>()({ 'too-many': 'at most {$most :integer}' })
 */
export function sentences<F extends Fact, Within extends Fact = never>(): <const S extends Sentences<F>>(
  of: S & Checked<F, Within, S>,
) => S {
  return (of) => of;
}
