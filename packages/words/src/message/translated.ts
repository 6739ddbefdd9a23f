/** Catalogues of other languages beside the English one: the same keys, and in each message the same places. */
import type { KindOf, PlaceNames } from './places.ts';
import type { Messages } from './speak.ts';

/** Names and kinds of a message's places. */
type Asked<Message extends string> = {
  readonly [Name in PlaceNames<Message>]: readonly [Name, KindOf<Message, Name>];
}[PlaceNames<Message>];

type SamePlaces<A extends string, B extends string> = [Asked<A>] extends [Asked<B>]
  ? [Asked<B>] extends [Asked<A>]
    ? true
    : false
  : false;

type Member<Other, Key> = Key extends keyof Other ? Other[Key] : undefined;

type Superfluous<English, Other> = Other extends readonly unknown[]
  ? unknown
  : { readonly [Key in Exclude<keyof Other, keyof English>]: never };

/**
 * What a translation has to be, key by key: itself where it is right; where it is not, a text that says why, which
 * no translation is. A key that English does not have must not be there.
 */
export type TranslationOf<English, Other> = English extends string
  ? Other extends string
    ? SamePlaces<English, Other> extends true
      ? Other
      : `other places than in: ${English}`
    : string
  : { readonly [Key in keyof English]: TranslationOf<English[Key], Member<Other, Key>> } & Superfluous<
      English,
      Other
    >;

/**
 * Takes a translation of an English catalogue. What is missing, superfluous or has other places does not compile.
 * For example: translation<typeof english>()({ close: 'Fertig' })
 */
export function translation<English>(): <const Other extends Messages>(
  other: Other & TranslationOf<English, Other>,
) => Other {
  return (other) => other;
}
