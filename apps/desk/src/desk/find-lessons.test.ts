import type { LessonSummary } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { countAlike, findLessons, type Search, shelfNames } from './find-lessons.ts';

function summary(title: string, more: Partial<LessonSummary> = {}): LessonSummary {
  const none = { by: null, exercises: 4, errors: 0, style: 'swing', finds: '4/4', level: null } as const;
  const moment = '2026-11-25T17:30:00.000Z';
  const times = { revision: 1, createdAt: moment, updatedAt: moment };
  return { id: title, title, shelves: [], isArchived: false, plays: title, ...none, ...times, ...more };
}

const LESSONS = [
  summary('Übung 10', { shelves: ['Tuesday'], updatedAt: '2026-11-26T00:00:00.000Z' }),
  summary('Übung 9', { style: 'waltz', finds: '3/4\nCharleston', plays: 'Übung 10', level: 'beginner' }),
  summary('Bossa', { style: 'eighths', by: 'Oda', shelves: ['Kaito', 'Tuesday'] }),
  summary('Old bossa', { isArchived: true, plays: 'Bossa' }),
];

const KAITO = { id: 'k', name: 'Kaito', lessons: ['Übung 9'] };

function titles(search: Partial<Search>): readonly (string | null)[] {
  const all = { text: '', shelf: { kind: 'all' }, order: 'title', language: 'de', ...search } as const;
  return findLessons(LESSONS, all).map(({ title }) => title);
}

it('[ST420] finds lessons by every word that is written, in titles, names, headings and shelves', () => {
  expect(titles({ text: 'ubung' })).toEqual(['Übung 9', 'Übung 10']);
  expect(titles({ text: 'charles UB' })).toEqual(['Übung 9']);
  expect(titles({ text: 'tuesday oda' })).toEqual(['Bossa']);
  expect(titles({ text: 'nothing' })).toEqual([]);
});

it('[ST420] looks at the shelf of a student, a style, a level, one of the own, the archive, and what is alike', () => {
  expect(titles({})).toEqual(['Bossa', 'Übung 9', 'Übung 10']);
  expect(titles({ order: 'changed' })[0]).toBe('Übung 10');
  expect(titles({ shelf: { kind: 'student', student: KAITO } })).toEqual(['Bossa', 'Übung 9']);
  expect(titles({ shelf: { kind: 'style', style: 'waltz' } })).toEqual(['Übung 9']);
  expect(titles({ shelf: { kind: 'level', level: 'beginner' } })).toEqual(['Übung 9']);
  expect(titles({ shelf: { kind: 'own', name: 'Tuesday' } })).toEqual(['Bossa', 'Übung 10']);
  expect(titles({ shelf: { kind: 'archive' } })).toEqual(['Old bossa']);
  // definition: two that play the same; the one in the archive is out of the way
  expect(titles({ shelf: { kind: 'alike' } })).toEqual(['Übung 9', 'Übung 10']);
  expect(countAlike(LESSONS)).toBe(2);
  expect(shelfNames(LESSONS, 'en')).toEqual(['Kaito', 'Tuesday']);
});
