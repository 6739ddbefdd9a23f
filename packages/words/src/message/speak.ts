/**
 * Catalogues of the screens: texts stay texts, and messages with places become functions of one object that has a
 * value for each: `words.bars({ bars: 3 })`.
 */
import type { Tongue } from '../language/tongue.ts';
import { compile, type Fill } from './compiled.ts';
import type { Kinds } from './kinds.ts';
import type { KindOf, PlaceNames } from './places.ts';

/** Texts and messages in groups. */
export type Messages = string | readonly Messages[] | { readonly [key: string]: Messages };

/** The values that a message takes. */
export type Values<Message extends string> = {
  readonly [Name in PlaceNames<Message>]: KindOf<Message, Name> extends keyof Kinds
    ? Kinds[KindOf<Message, Name>]
    : `no kind of value: ${KindOf<Message, Name>}`;
};

/** A catalogue in use. */
export type Spoken<M> = M extends string
  ? [PlaceNames<M>] extends [never]
    ? string
    : (values: Values<M>) => string
  : { readonly [Key in keyof M]: Spoken<M[Key]> };

function noFacts(): never {
  throw new RangeError('Internal error: catalogues of screens say no facts');
}

function spokenMessage(message: string, tongue: Tongue): string | Fill {
  if (!message.includes('{')) return message;
  let fill: Fill | null = null;
  return (values) => {
    fill ??= compile(message, tongue, noFacts);
    return fill(values);
  };
}

function spokenGroup(messages: Messages, tongue: Tongue): unknown {
  if (typeof messages === 'string') return spokenMessage(messages, tongue);
  if (Array.isArray(messages)) return messages.map((each) => spokenGroup(each, tongue));
  return Object.fromEntries(Object.entries(messages).map(([key, each]) => [key, spokenGroup(each, tongue)]));
}

/**
 * A catalogue in use in a language. Each message is parsed when it is first said.
 * For example: speak({ bars: '.input {$bars :integer} .match $bars one {{{$bars} bar}} * {{{$bars} bars}}' }, tongue)
 */
export function speak<const M extends Messages>(messages: M, tongue: Tongue): Spoken<M> {
  return spokenGroup(messages, tongue) as Spoken<M>;
}
