/**
 * What a practice log looks like. What no log has is refused, so that nothing that is written down is lost unseen.
 *
 * Conventions: every `error` is the fact that is expected, as JSON, since the validator's messages are texts.
 */
import {
  Bpm,
  FAULT_KINDS,
  HEARD_BY,
  LOOP_VERDICTS,
  type PracticeEntry,
  type PracticeLog,
  Seconds,
  VOICES,
} from '@shedbook/core';
import * as z from 'zod/mini';
import { readMoment } from '../time/moment.ts';
import type { LogFact, LogRangeFact } from './log-fact.ts';

const expecting = (fact: LogFact) => JSON.stringify(fact);

/** What was expected where the schema has an issue. */
export function expectedBy({ message }: z.core.$ZodIssue): LogFact {
  return JSON.parse(message) as LogFact;
}

const MOMENT = expecting({ fact: 'a-moment' });
const COUNT = expecting({ fact: 'count-from-one' });
const TEXT = expecting({ fact: 'a-text' });

const moment = z.string(MOMENT).check(z.refine((text) => readMoment(text) !== null, MOMENT));
const count = z.int(COUNT).check(z.gte(1, COUNT));
const text = z.string(TEXT).check(z.refine((each) => each !== '', TEXT));

function number(least: number, most: number, fact: LogRangeFact['fact']) {
  const error = expecting({ fact, least, most });
  return z.number(error).check(z.gte(least, error), z.lte(most, error));
}

function word<const W extends readonly string[]>(words: W) {
  return z.enum(words, expecting({ fact: 'one-of', words }));
}

function list<S extends z.ZodMiniType>(item: S) {
  return z.array(item, expecting({ fact: 'list' }));
}

/** An object with exactly these keys. */
function object<S extends z.core.$ZodLooseShape>(shape: S) {
  const keys = Object.keys(shape);
  return z.strictObject(shape, {
    error: ({ code }) =>
      expecting(
        code === 'unrecognized_keys' ? { fact: 'one-of', words: keys } : { fact: 'object-with', keys },
      ),
  });
}

const fault = object({
  kind: word(FAULT_KINDS),
  voice: z.nullable(word(VOICES)),
  place: z.nullable(object({ bar: count, beat: count, slot: count })),
  amount: number(0, 1e6, 'amount-from'),
});

const loop = object({
  bpm: z.pipe(number(1, 1000, 'tempo-from'), z.transform(Bpm)),
  verdict: word(LOOP_VERDICTS),
  faults: list(fault),
  unheard: z.exactOptional(list(word(VOICES))),
});

/** An entry of a practice log. */
export const entrySchema: z.ZodMiniType<PracticeEntry> = object({
  id: text,
  device: text,
  startedAt: moment,
  durationSeconds: z.pipe(number(0, 86_400, 'seconds-from'), z.transform(Seconds)),
  lesson: text,
  exercise: z.nullable(text),
  form: text,
  heardBy: word(HEARD_BY),
  loops: list(loop),
});

/** A practice log. */
export const logSchema: z.ZodMiniType<PracticeLog> = object({
  version: z.int(expecting({ fact: 'a-version-number' })),
  entries: list(entrySchema),
  removed: list(text),
});
