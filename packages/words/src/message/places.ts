/**
 * What a message asks to be filled in, read from its text by the compiler.
 *
 * Conventions: messages are Unicode MessageFormat 2. `{$title}` is a text; `{$bars :integer}` and
 * `.input {$bars :integer}` say of which kind a value is; which kinds there are stands in `kinds.ts`. A `$` that
 * names no value and declarations by `.local` are not used.
 * Source: Unicode Technical Standard 35, part 9, MessageFormat (LDML 48).
 */

type FirstWord<Text extends string> = Text extends `${infer Word} ${string}`
  ? Word extends `${infer Line}\n${string}`
    ? Line
    : Word
  : Text extends `${infer Line}\n${string}`
    ? Line
    : Text;

type KindIn<Expression extends string> = Expression extends `${string} :${infer Kind}`
  ? Expression extends `${FirstWord<Expression>} :${string}`
    ? FirstWord<Kind>
    : 'text'
  : 'text';

type PlaceIn<Expression extends string> = readonly [FirstWord<Expression>, KindIn<Expression>];

/** Every place of a message as a pair of name and kind; a place without a kind of its own has the kind `text`. */
export type Places<Message extends string> = Message extends `${string}$${infer Rest}`
  ? (Rest extends `${infer Expression}}${string}` ? PlaceIn<Expression> : never) | Places<Rest>
  : never;

/** The names of the places of a message. */
export type PlaceNames<Message extends string> = Places<Message>[0];

/** The kind of one place: the one that is named, or `text` when none is. */
export type KindOf<Message extends string, Name extends string> = [
  Exclude<Extract<Places<Message>, readonly [Name, string]>[1], 'text'>,
] extends [never]
  ? 'text'
  : Exclude<Extract<Places<Message>, readonly [Name, string]>[1], 'text'>;
