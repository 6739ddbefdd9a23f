import { describe, expect, it } from 'vitest';
import { parseBook } from './book.ts';
import { LONGEST_LESSON, parseLesson } from './parse.ts';
import { MOST_PROBLEMS } from './problem.ts';

function expectedOf(text: string) {
  const { lesson, problems } = parseLesson(text, 'a.lesson.yaml');
  expect(lesson === null).toBe(problems.some(({ severity }) => severity === 'error'));
  return problems
    .filter(({ severity }) => severity === 'error')
    .map(({ path, expected }) => [path, expected]);
}

const upTo = (most: number) => ({ fact: 'characters-up-to', most });
const EXERCISE = 'exercises: ["x x x x"]\n';

describe('the room that a lesson has', () => {
  it('[LE24] is as much as is said, and no more', () => {
    // definition: the rule itself
    expect(expectedOf(`title: ${'T'.repeat(200)}\n${EXERCISE}`)).toEqual([]);
    expect(expectedOf(`title: ${'T'.repeat(201)}\n${EXERCISE}`)).toEqual([['title', upTo(200)]]);
    const notes = (length: number) =>
      `title: T\nexercises:\n  - pattern: x x x x\n    notes: ${'n'.repeat(length)}\n`;
    expect(expectedOf(notes(10_000))).toEqual([]);
    expect(expectedOf(notes(10_001))).toEqual([['exercises[1].notes', upTo(10_000)]]);
    const address = (length: number) =>
      `title: T\npracticePage: https://a.example/${'a'.repeat(length - 18)}\n`;
    expect(expectedOf(address(300))).toEqual([]);
    expect(expectedOf(address(301))).toEqual([['practicePage', upTo(300)]]);
    const bars = `title: T\nexercises:\n  - "${Array.from({ length: 1001 }, () => 'x x x x').join(' | ')}"\n`;
    expect(expectedOf(bars)).toEqual([['exercises[1]', upTo(10_000)]]);
    const exercises = `title: T\nexercises:\n${'  - x x x x\n'.repeat(1001)}`;
    expect(expectedOf(exercises)).toEqual([['exercises', { fact: 'items-up-to', most: 1000 }]]);
  });

  it('[LE24] is not left by lists that would take a reader forever', () => {
    const most = { fact: 'items-up-to', most: 60_000 };
    expect(expectedOf(`title: T\nexercises: [${'7,'.repeat(70_000)}7]\n`)).toEqual([['', most]]);
    const letters = ['a', 'b', 'c', 'd', 'e', 'f'];
    const bomb = letters.map(
      (each, n) => `${each}: &${each} [${Array(10).fill(n === 0 ? 'x' : `*${letters[n - 1]}`)}]`,
    );
    expect(expectedOf(`${bomb.join('\n')}\n`).length).toBeGreaterThan(0);
  });

  it('[LE5000] tells as many problems as anybody mends before looking again, an error among them', () => {
    const told = (text: string) => parseLesson(text, 'a.lesson.yaml');
    const keys = (count: number) => Array.from({ length: count }, (_, n) => `k${n}: 1\n`).join('');
    // definition: a fault for each unknown key, each key twice, and each item that is no pattern
    expect(told(`title: T\n${keys(20)}`).problems).toHaveLength(20);
    const long = [keys(20_000), 'by: A\n'.repeat(20_000), `exercises: [${'q, '.repeat(900)}q]\n`];
    for (const each of long) {
      const { lesson, problems } = told(`title: T\n${each}`);
      expect(lesson).toBeNull();
      expect(problems).toHaveLength(MOST_PROBLEMS);
      expect(problems.every(({ severity }) => severity === 'error')).toBe(true);
      const lines = problems.map(({ line, column }) => line + column / 1e6);
      expect(lines).toEqual(lines.toSorted((a, b) => a - b));
    }
  });

  it('[LE5000] is that of a book, too', () => {
    const told = (text: string) => parseBook(text, 'a.book.yaml').problems.map(({ expected }) => expected);
    expect(told('#'.repeat(LONGEST_LESSON + 1))).toEqual([upTo(LONGEST_LESSON)]);
    const named = (count: number) => `title: T\nlessons:\n${'  - a.lesson.yaml\n'.repeat(count)}`;
    expect(told(named(500))).toEqual([]);
    expect(told(named(501))).toEqual([{ fact: 'items-up-to', most: 500 }]);
    expect(told(`lessons: [${'a,'.repeat(60_000)}]`)).toEqual([{ fact: 'items-up-to', most: 60_000 }]);
    expect(told(Array.from({ length: 20_000 }, (_, n) => `k${n}: 1\n`).join(''))).toHaveLength(MOST_PROBLEMS);
  });

  it('[LE24] ends where a lesson would be longer than any', () => {
    expect(expectedOf('#'.repeat(LONGEST_LESSON + 1))).toEqual([['', upTo(LONGEST_LESSON)]]);
  });
});
