/**
 * Numbers in messages, as MessageFormat has them: with formats of the language that are made once, since making one takes
 * a hundred times as long as using it.
 */
import { DefaultFunctions, type MessageFunction, type MessageValue } from 'messageformat/functions';

/** The kinds of numbers. */
type NumberKind = 'number' | 'integer';

/** Says numbers in one way. */
interface NumberFormat {
  readonly options: Intl.NumberFormatOptions;
  readonly format: Intl.NumberFormat;
  readonly rules: Intl.PluralRules;
}

function formatOf(locale: string, options: Intl.NumberFormatOptions): NumberFormat {
  return {
    options,
    format: new Intl.NumberFormat(locale, options),
    rules: new Intl.PluralRules(locale, options as Intl.PluralRulesOptions),
  };
}

function said(value: number, { options, format, rules }: NumberFormat): MessageValue<string> {
  return {
    type: 'number',
    options: { ...options },
    toString: () => format.format(value),
    valueOf: () => value,
    selectKey: (keys) => {
      const exact = String(value);
      if (keys.has(exact)) return exact;
      const category = rules.select(value);
      return keys.has(category) ? category : null;
    },
  };
}

function numberOf(locale: string, kind: NumberKind): MessageFunction<string> {
  const plain = DefaultFunctions[kind];
  const formats = new Map<string, NumberFormat>();
  return (context, options, operand) => {
    // What was a message's number before, and what is selected in another way, is left to the library.
    if (typeof operand !== 'number' || 'select' in options) return plain(context, options, operand);
    const key = JSON.stringify(options);
    const known = formats.get(key) ?? formatOf(locale, plain(context, options, operand).options);
    formats.set(key, known);
    return said(kind === 'integer' && Number.isFinite(operand) ? Math.round(operand) : operand, known);
  };
}

const languages = new Map<string, Readonly<Record<NumberKind, MessageFunction<string>>>>();

/** The functions of MessageFormat that say numbers, for one language. */
export function numbersOf(locale: string): Readonly<Record<NumberKind, MessageFunction<string>>> {
  const known = languages.get(locale) ?? {
    number: numberOf(locale, 'number'),
    integer: numberOf(locale, 'integer'),
  };
  languages.set(locale, known);
  return known;
}
