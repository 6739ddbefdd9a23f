import { readdirSync, readFileSync } from 'node:fs';
import { explain } from '@shedbook/composer';
import { type Fact, parseLesson } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { type Language, say } from './say.ts';
import type { Sayable } from './sayable.ts';
import { sentences } from './sentences.ts';

const DEMO = new URL('../../../../demo/', import.meta.url);

interface TooMany extends Fact {
  readonly fact: 'too-many';
  readonly most: number;
}

interface Alone extends Fact {
  readonly fact: 'alone';
}

function both(fact: Sayable): readonly string[] {
  return [say(fact, ENGLISH), say(fact, GERMAN)];
}

const LET = { fact: 'syllable', syllable: 'let', beat: 1 } as const;

describe('facts', () => {
  it('[WO1] are said with their values, and with the facts within them', () => {
    const places = [LET, { fact: 'in-bar', place: { fact: 'beat', beat: 3 }, bar: 2 }] as const;
    // definition: 1 is singular in both languages, 2 is not; lists have no comma before the last member
    expect(both({ fact: 'fall-alone', strokes: 2, places })).toEqual([
      '2 strokes fall alone: on the let of 1 and 3 in bar 2',
      '2 Schläge fallen allein: auf dem „ole“ der 1 und der 3 in Takt 2',
    ]);
    const voices = ['ride', 'bass', 'hihat-foot'] as const;
    expect(both({ fact: 'fall-with', strokes: 1, voices, places: [{ fact: 'beat', beat: 2 }] })).toEqual([
      '1 stroke falls with ride, bass drum and hi-hat foot: on 2',
      '1 Schlag fällt mit Ride, Bassdrum und Hi-Hat-Fuß zusammen: auf der 2',
    ]);
  });

  it('[WO1] are said with numbers as the language writes them', () => {
    // standard: CLDR, decimal separator of German: a comma
    expect(both({ fact: 'part-pulse', count: 2.55 })).toEqual([
      'it says little of the pulse (2.6 against it)',
      'der Puls ist wenig zu hören (2,6 gegen ihn)',
    ]);
    expect(both({ fact: 'silence', bars: 1 })).toEqual(['1 is silent', 'die 1 ist still']);
  });

  it('[WO2] have a sentence that can be said for every reason of the demo sheets', () => {
    const files = readdirSync(DEMO).filter((name) => name.endsWith('.lesson.yaml'));
    const lessons = files.flatMap(
      (name) => parseLesson(readFileSync(new URL(name, DEMO), 'utf8'), name).lesson ?? [],
    );
    const reasons = lessons.flatMap((lesson) =>
      lesson.exercises.flatMap((exercise) => explain(lesson, exercise).reasons),
    );
    expect(reasons.length).toBeGreaterThan(100);
    for (const { why } of reasons) for (const text of both(why)) expect(text).toMatch(/^[^{}�]+$/);
  });

  it('[WO3] do not compile without a sentence, nor a sentence with what its fact does not have', () => {
    const right = sentences<TooMany | Alone>()({ 'too-many': 'at most {$most :integer}', alone: 'alone' });
    const language: Language<TooMany | Alone> = { tongue: ENGLISH.tongue, sentences: right };
    expect(say({ fact: 'too-many', most: 3 }, language)).toBe('at most 3');
    // @ts-expect-error a fact without a sentence
    sentences<TooMany | Alone>()({ alone: 'alone' });
    // @ts-expect-error a sentence without a fact
    sentences<Alone>()({ alone: 'alone', together: 'together' });
    // @ts-expect-error a place that the fact has no value for
    sentences<TooMany>()({ 'too-many': 'at most {$least :integer}' });
    // @ts-expect-error a number where a text is asked for
    sentences<TooMany>()({ 'too-many': 'at most {$most}' });
    // @ts-expect-error a kind that there is not
    sentences<TooMany>()({ 'too-many': 'at most {$most :weight}' });
    const tooMany: TooMany = { fact: 'too-many', most: 3 };
    // @ts-expect-error a fact that the language has no sentence for
    expect(() => say(tooMany, ENGLISH)).toThrow();
  });
});
