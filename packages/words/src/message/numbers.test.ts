import { MessageFormat } from 'messageformat';
import { expect, it } from 'vitest';
import { numbersOf } from './numbers.ts';

const OPTIONS = [
  ...['', 'useGrouping=never', 'signDisplay=exceptZero', 'minimumFractionDigits=1', 'select=exact'],
  'minimumFractionDigits=1 maximumFractionDigits=2 useGrouping=never',
];
const MESSAGES = OPTIONS.flatMap((options) =>
  ['integer', 'number'].flatMap((kind) => [
    `{$n :${kind} ${options}}`,
    `.input {$n :${kind} ${options}} .match $n 1 {{just {$n}}} one {{one {$n}}} * {{{$n} of them}}`,
    `.input {$n :number ${options}} {{{$n :${kind}}}}`,
  ]),
);
const NUMBERS = [0, 1, 2, -1, -0.4, 0.96, 1.04, 2.5, 12.345, 1200, 1_234_567.891, Number.NaN, Infinity];

/** What each message says of each number, and what it finds wrong. */
function saidIn(locale: string, options: object): readonly string[] {
  return MESSAGES.flatMap((message) => {
    const format = new MessageFormat(locale, message, { ...options, bidiIsolation: 'none' });
    return [...NUMBERS, '3', 'many'].flatMap((n) => {
      const errors: string[] = [];
      const said = format.format({ n }, (error) => errors.push(String(error)));
      return [`${message} of ${n}: ${said}`, ...errors];
    });
  });
}

it.each(['en', 'de'])('[WO2600] are said in %s as the library says them, whichever came before', (locale) => {
  // library: messageformat 4.0.0, its own functions
  expect(saidIn(locale, { functions: numbersOf(locale) })).toEqual(saidIn(locale, {}));
});
