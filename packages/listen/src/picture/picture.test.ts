import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { playNotes, reportOfNotes } from '../../test/played-notes.ts';
import { withUnheard } from '../remarks/unheard.ts';
import { COLOURS, PIXELS_PER_MS } from './look.data.ts';
import { drawReport } from './picture.ts';

const LATE_MS = 30;

/** Every bass drum stroke late; one hi-hat foot missing and one snare stroke too many, all in bar 2. */
const report = reportOfNotes(
  [
    ...playNotes(1, 100, (note) => {
      if (note.voice === 'hihat-foot' && note.written.bar === 2 && note.written.beat === 4) return null;
      return note.voice === 'bass' ? { ...note, timeSeconds: note.timeSeconds + LATE_MS / 1000 } : note;
    }),
    { timeSeconds: 4.8, voice: 'tom-mid' as const, levelDb: 0, written: { bar: 2, beat: 1, slot: 1 } },
  ].toSorted((a, b) => a.timeSeconds - b.timeSeconds),
);

const draw = (title: string, language: 'en' | 'de' = 'en') =>
  drawReport(report, { title, level: 'intermediate', language });

const countOf = (svg: string, pattern: RegExp) => [...svg.matchAll(pattern)].length;

describe('the picture of a report', () => {
  it('[LI35] is a well-formed document in two languages, with any title', () => {
    for (const language of ['en', 'de'] as const) {
      const svg = draw('Bossa & "Tumba" <3>', language);
      // library: libxml2's xmllint
      expect(() => execFileSync('xmllint', ['--noout', '-'], { input: svg })).not.toThrow();
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    }
    expect(draw('x', 'de')).toContain('Bassdrum');
  });

  it('[LI46] says what cannot be told in the language of the page', () => {
    const page = (language: 'en' | 'de') =>
      drawReport(withUnheard(report, [{ reason: 'not-heard', voice: 'bass' }]), {
        ...{ title: 'x', level: 'intermediate', language },
      });
    expect(page('en')).toContain('The bass drum was not heard at all');
    expect(page('de')).toContain('Die Bassdrum war nicht zu hören');
    expect(page('de')).not.toContain('not heard');
  });

  it('[LI36] draws every stroke at its displacement, and what is missing or too many', () => {
    const svg = draw('x');
    const ways = [
      ...svg.matchAll(
        /<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="\2" stroke="#1b2330" stroke-width="0.8"\/>/g,
      ),
    ];
    const shifts = ways.map((way) => Number(way[3]) - Number(way[1]));
    const wanted = (ms: number) =>
      shifts.filter((shift) => Math.abs(shift - ms * PIXELS_PER_MS) < 0.02).length;
    // definition: eight bars of four late strokes of the bass drum, and all others on their place
    expect(wanted(LATE_MS)).toBe(32);
    expect(wanted(0)).toBe(8 * 13 - 1);
    // definition: one of each, and one of each in the legend
    expect(countOf(svg, new RegExp(`stroke="${COLOURS.accent}"[^>]*stroke-dasharray="2`, 'g'))).toBe(2);
    expect(countOf(svg, />\+</g)).toBe(2);
  });

  it('[LI37] is ink on paper with one accent, and stays a page for a long take', () => {
    const colours = new Set([...draw('x').matchAll(/#[0-9a-f]{3,6}\b/gi)].map(([colour]) => colour));
    expect([...colours].toSorted()).toEqual(Object.values(COLOURS).toSorted());
    const bars = Array.from({ length: 200 }, (_, i) => ({ timeSeconds: 2.4 * i, bpm: 100 }));
    const long = { ...report, tempo: bars, playedBars: bars.map((_, i) => (i % 8) + 1) };
    const svg = drawReport(long, { title: 'x', level: 'beginner', language: 'en' });
    // definition: eight rows of four bars are drawn
    expect(svg).toContain('and 168 more bars');
  });
});
