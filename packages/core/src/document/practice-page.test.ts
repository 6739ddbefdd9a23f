import { describe, expect, it } from 'vitest';
import { parseLesson } from './parse.ts';
import { printLesson } from './print.ts';

function read(line: string) {
  return parseLesson(`title: First swing\n${line}\n`, 'first.lesson.yaml');
}

describe('the practice page', () => {
  it('[LE13] is an address on the web, kept when the lesson is printed', () => {
    const address = 'https://tannery.example/first-swing/';
    const { lesson, problems } = read(`practicePage: ${address}`);
    expect(problems).toEqual([]);
    expect(lesson?.practicePage).toBe(address);
    if (!lesson) throw new Error('the lesson has problems');
    expect(parseLesson(printLesson(lesson), 'again').lesson?.practicePage).toBe(address);
    expect(read('by: Oda').lesson?.practicePage).toBeNull();
  });

  it.each(['first-swing', 'ftp://tannery.example/', 'https://', 'javascript:alert(1)'])(
    '[LE13] is refused where no browser could open it: %s',
    (address) => {
      const { lesson, problems } = read(`practicePage: "${address}"`);
      expect(lesson).toBeNull();
      expect(problems[0]).toMatchObject({
        line: 2,
        path: 'practicePage',
        found: { fact: 'quoted', text: address },
      });
      expect(problems[0]?.expected).toEqual({ fact: 'a-web-address' });
    },
  );
});
