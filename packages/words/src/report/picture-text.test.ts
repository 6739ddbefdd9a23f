import { judge } from '@shedbook/judge';
import { expect, it } from 'vitest';
import { asked, playNotes, reportOfNotes } from '../../../../internal/testing/played-notes.ts';
import { LANGUAGE_TAGS, type LanguageTag } from '../language/languages.ts';
import { pictureText } from './picture-text.ts';

const judgement = judge(asked, { report: reportOfNotes(playNotes(1, 100, (note) => note)) }, 'intermediate');
const report = {
  ...reportOfNotes(playNotes(1, 100, (note) => note)),
  unheard: [{ reason: 'not-heard', voice: 'bass' }] as const,
};

it('[LI46] a picture says what cannot be told in the language of the page', () => {
  const text = (language: LanguageTag) => pictureText(report, { title: 'x', judgement, language });
  expect(text('en').unheard[0]).toContain('The bass drum was not heard at all');
  expect(text('de').unheard[0]).toContain('Die Bassdrum war nicht zu hören');
  expect(text('de').words.voices.bass).toBe('Bassdrum');
});

it('[LI33] calls what nobody hears in time, and names the rest by direction', () => {
  // published: Friberg & Sundberg 1995: 6 ms are just noticed
  const said = LANGUAGE_TAGS.map((language) => {
    const { lateness } = pictureText(report, { title: 'x', judgement, language }).words;
    return [-7, -5, 5.4, 6].map(lateness);
  });
  expect(said).toEqual([
    ['7 ms early', 'in time', 'in time', '6 ms late'],
    ['7 ms zu früh', 'pünktlich', 'pünktlich', '6 ms zu spät'],
  ]);
});
