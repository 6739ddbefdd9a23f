import { describe, expect, it } from 'vitest';
import { LONGEST_LESSON, parseLesson } from './parse.ts';

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

  it('[LE24] ends where a lesson would be longer than any', () => {
    expect(expectedOf('#'.repeat(LONGEST_LESSON + 1))).toEqual([['', upTo(LONGEST_LESSON)]]);
  });
});
