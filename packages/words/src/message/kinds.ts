/** Kinds of values in messages: which type fills each, and how those that are ours are said. */
import {
  exerciseLabel,
  type Fact,
  type Limb,
  type SidedLimb,
  type SoundingVoice,
  type Syllable,
} from '@shedbook/core';
import type { MessageFunction, MessageValue } from 'messageformat/functions';
import type { Case, Tongue } from '../language/tongue.ts';
import { capital } from './capital.ts';
import { numbersOf } from './numbers.ts';

/** The type that fills a place of each kind; facts are those of `F`. */
export interface Kinds<F extends Fact = never> {
  /** A place that names no kind. */
  readonly text: string;
  readonly string: string;
  /** A number as it is, in the digits of the language: `2,5` in German. */
  readonly number: number;
  /** A whole number; what is passed is rounded to one. */
  readonly integer: number;
  /** A voice by its name; `at=start` begins a line with it. */
  readonly voice: SoundingVoice;
  /** A voice with its article; `at=start` begins a sentence with it, `case=dative` puts it in that case. */
  readonly the: SoundingVoice;
  /** Voices joined as the language joins a list; `each=the` sets a word before each of them. */
  readonly voices: readonly SoundingVoice[];
  readonly limb: Limb;
  /** What is counted inside a beat. */
  readonly syllable: Syllable;
  /** A limb by its side; `at=start` begins a sentence with it. */
  readonly side: SidedLimb;
  readonly sides: readonly SidedLimb[];
  /** The number of an exercise as people read it, with the letter of its section where they begin anew there. */
  readonly exercise: number;
  /** Several of those, joined as lists are. */
  readonly exercises: readonly number[];
  /** Days from today as people say them: `yesterday`, `3 days ago`. */
  readonly day: number;
  /** A fact within a fact, said as a clause of the sentence. */
  readonly say: F;
  /**
   * Several values joined as the language joins them; `type=or` joins alternatives, `type=series` by
   * commas alone, `type=apart` by semicolons, where members have commas of their own, `type=beside` by
   * points, where they have semicolons.
   */
  readonly list: readonly Item<F>[];
}

/** A member of a list: a text as it is, or a fact to be said. */
export type Item<F extends Fact> = string | F;

/** Says a fact as a clause. */
export type Say<F extends Fact> = (fact: F) => string;

function said(type: string, text: string): MessageValue<string> {
  return {
    type,
    toString: () => text,
    valueOf: () => text,
    selectKey: (keys) => (keys.has(text) ? text : null),
  };
}

/** A name, with a capital where it stands at the start. */
function begun(name: string, at: unknown): string {
  return at === undefined ? name : capital(name);
}

const lists = new Map<string, Intl.ListFormat>();

/** A way of joining, made once. */
function joining(locale: string, type: 'conjunction' | 'disjunction'): Intl.ListFormat {
  const key = `${locale} ${type}`;
  const known = lists.get(key) ?? new Intl.ListFormat(locale, { type });
  lists.set(key, known);
  return known;
}

/** What stands between members, by the type of the list, where no word of the language does. */
const BETWEEN: Readonly<Record<string, string>> = { series: ', ', apart: '; ', beside: ' · ' };

/** Says each member of a list, and joins them. */
function listOf<Member>({ locale }: Tongue, name: (member: Member) => string): MessageFunction<string> {
  return (_context, options, members) => {
    const before = options['each'] === undefined ? '' : `${options['each']} `;
    const names = (members as readonly Member[]).map((member) => before + name(member));
    const wanted = options['type'];
    const between = BETWEEN[String(wanted)];
    if (between) return said('list', names.join(between));
    const type = wanted === undefined ? 'conjunction' : 'disjunction';
    return said('list', joining(locale, type).format(names));
  };
}

function dayOf({ locale }: Tongue, days: number): string {
  return new Intl.RelativeTimeFormat(locale, { numeric: 'auto' }).format(days, 'day');
}

/** The kinds that MessageFormat does not have of itself, for one language, and its numbers. */
export function kindsOf(tongue: Tongue, say: Say<Fact>): Readonly<Record<string, MessageFunction<string>>> {
  return {
    ...numbersOf(tongue.locale),
    voice: (_context, options, voice) =>
      said('voice', begun(tongue.voices[voice as SoundingVoice], options['at'])),
    the: (_context, options, voice) => {
      const wanted = (options['case'] === undefined ? 'nominative' : String(options['case'])) as Case;
      return said('the', begun(tongue.theVoices[wanted][voice as SoundingVoice], options['at']));
    },
    limb: (_context, _options, limb) => said('limb', tongue.limbs[limb as Limb]),
    syllable: (_context, _options, syllable) => said('syllable', tongue.syllables[syllable as Syllable]),
    side: (_context, options, limb) => said('side', begun(tongue.sides[limb as SidedLimb], options['at'])),
    say: (_context, _options, fact) => said('say', say(fact as Fact)),
    sides: listOf(tongue, (limb: SidedLimb) => tongue.sides[limb]),
    day: (_context, _options, days) => said('day', dayOf(tongue, days as number)),
    voices: listOf(tongue, (voice: SoundingVoice) => tongue.voices[voice]),
    exercise: (_context, _options, number) => said('exercise', exerciseLabel(number as number)),
    exercises: listOf(tongue, exerciseLabel),
    list: listOf(tongue, (item: Item<Fact>) => (typeof item === 'string' ? item : say(item))),
  };
}
