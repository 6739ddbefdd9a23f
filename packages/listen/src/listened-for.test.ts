import { type Lesson, parseLesson } from '@shedbook/core';
import { expect, it } from 'vitest';
import { askedOfSound } from './listened-for.ts';
import { asAsked } from './network/heard-voices.data.ts';

function askedOf(text: string) {
  const lesson = parseLesson(`title: T\n${text}`, 'asked').lesson as Lesson;
  return { lesson, exercise: 1, form: lesson.forms[0] as Lesson['forms'][number] };
}

it('[LI2900] a voice that training never met is neither heard nor missed in sound, and it is said', () => {
  const { asked, unheard } = askedOfSound(
    askedOf(
      'groove: {ride: x x x x, bass: x . x .}\nexercises: [{pattern: {snare: . x . x, splash: x . . .}}]\n',
    ),
  );
  expect(unheard).toEqual([{ reason: 'not-listened-for', voice: 'splash' }]);
  expect(asked.plays).toContain('snare');
  // definition: a splash would be told as a crash, which nobody is asked for
  expect([asked.plays?.includes('splash'), asked.plays?.includes('crash')]).toEqual([false, false]);
  const withCrash = askedOfSound(
    askedOf('groove: {ride: x x x x}\nexercises: [{pattern: {crash: x . . ., splash: . x . .}}]\n'),
  );
  expect(withCrash.asked.plays).toContain('crash');
  const plain = askedOf('exercises: [x . x .]\n');
  expect(askedOfSound(plain)).toEqual({ asked: plain, unheard: [] });
  expect(
    askedOfSound({
      ...askedOf('exercises: [{pattern: {snare: x . . ., china: . x . .}}]\n'),
      plays: ['snare'],
    }).unheard,
  ).toEqual([]);
});

it('[LI2901] a kit that sends the edge of a crash as a splash is taken for the crash, unless a splash is asked for', () => {
  // published: Groove MIDI Dataset (Gillick et al. 2019): kits send crashes as 49, 52, 55 and 57
  expect(asAsked('splash', new Set(['snare', 'crash']))).toBe('crash');
  expect(asAsked('splash', new Set(['snare', 'splash']))).toBe('splash');
  expect([asAsked('tom-floor', new Set()), asAsked('snare', new Set())]).toEqual(['tom-low', 'snare']);
});
