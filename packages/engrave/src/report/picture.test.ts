import { Bpm, Seconds, TakeDb, VOICES, type Voice } from '@shedbook/core';
import { XmlDocument } from 'libxml2-wasm';
import { describe, expect, it } from 'vitest';
import { playNotes, reportOfNotes } from '../../../../internal/testing/played-notes.ts';
import { COLOURS, PIXELS_PER_MS } from './look.data.ts';
import { drawReport } from './picture.ts';
import type { PictureText } from './picture-words.ts';

const LATE_MS = 30;

/** Every bass drum stroke late; one hi-hat foot missing and one snare stroke too many, all in bar 2. */
const report = reportOfNotes(
  [
    ...playNotes(1, 100, (note) => {
      if (note.voice === 'hihat-foot' && note.written.bar === 2 && note.written.beat === 4) return null;
      return note.voice === 'bass'
        ? { ...note, timeSeconds: Seconds(note.timeSeconds + LATE_MS / 1000) }
        : note;
    }),
    {
      timeSeconds: Seconds(4.8),
      voice: 'tom-mid' as const,
      levelDb: TakeDb(0),
      written: { bar: 2, beat: 1, slot: 1 },
    },
  ].toSorted((a, b) => a.timeSeconds - b.timeSeconds),
);

const named = Object.fromEntries(VOICES.map((voice) => [voice, `<${voice}>`])) as Record<Voice, string>;

/** What this picture says: each text says which it is. */
const says = (title: string): PictureText => ({
  title,
  summary: 'the summary',
  sentences: ['the first sentence', 'the second'],
  unheard: ['what was "not" heard'],
  words: {
    voices: named,
    lateness: (ms) => `lateness ${Math.round(ms)}`,
    ...{ voice: 'a voice', heard: 'heard', extra: 'extra', time: 'time', spread: 'spread', level: 'level' },
    ...{ balance: 'balance', asked: 'asked', played: 'played', tempo: 'tempo' },
    ...{ missedMark: 'missed & gone', extraMark: 'extra mark' },
    heardOf: ({ hits, due }) => `${hits} heard of ${due}`,
    displacement: ({ ms }) => `so far is ${ms}`,
    moreBars: ({ bars }) => `${bars} bars more`,
    spreadMs: ({ ms }) => `spread ${Math.round(ms)}`,
    decibels: ({ db }) => `${Math.round(db)} dB`,
    seconds: ({ seconds }) => `${Math.round(seconds)} s`,
    bpm: ({ bpm }) => `${bpm}`,
  },
});

const draw = (title: string) => drawReport(report, says(title));

const countOf = (svg: string, pattern: RegExp) => [...svg.matchAll(pattern)].length;

describe('the picture of a report', () => {
  it('[EN5303] gives no figures of a voice that can hardly be told', () => {
    const unheard = [{ reason: 'hard-to-tell', voice: 'bass' }] as const;
    const svg = drawReport({ ...report, unheard }, says('Guess'));
    // definition: the table has six columns; the name stands in the table, and no longer beside the ladder
    expect(countOf(svg, /&lt;bass&gt;/g)).toBe(countOf(draw('All'), /&lt;bass&gt;/g) - 1);
    expect(countOf(svg, />–</g) - countOf(draw('All'), />–</g)).toBe(4);
  });

  it('[LI35] is a well-formed document whatever its words are', () => {
    const svg = draw('Bossa & "Tumba" <3>');
    // library: libxml2 2 (libxml2-wasm), which throws at the first fault
    expect(() => XmlDocument.fromString(svg).dispose()).not.toThrow();
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('[LI35] says every word that it is given, and no other', () => {
    const svg = draw('the title');
    const texts = new Set([...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((match) => match[1]));
    const given = [
      'the title',
      'the summary',
      'the first sentence',
      'the second',
      'balance',
      'tempo',
      'asked',
    ];
    expect([...texts]).toEqual(
      expect.arrayContaining([...given, 'played', 'missed &amp; gone', 'extra mark']),
    );
    expect(svg).toContain('what was &quot;not&quot; heard');
    // definition: all bass drum strokes are late, and each of the eight bars has four
    expect([...texts]).toEqual(expect.arrayContaining(['&lt;bass&gt;', 'lateness 30', '32 heard of 32']));
    const marks = /^([-+±–\d]|bars more)/;
    const words = [...texts].filter((text) => !marks.test(text ?? ''));
    const known = JSON.stringify(says('the title'));
    const made = /^(lateness|spread|so far is|&lt;|what was|missed)/;
    expect(words.filter((text) => !made.test(text ?? '') && !known.includes(text ?? ''))).toEqual([]);
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

  it('[LI5901] counts each beat where it begins, also where beats are not of one length', () => {
    const { beats: _, ...asked } = report.asked;
    const uneven = { ...report, asked: { ...asked, beatsInBar: 3, beats: [0, 2 / 7, 4 / 7] } };
    const even = { ...report, asked: { ...asked, beatsInBar: 7 } };
    const placesOf = (drawn: typeof report) => {
      const svg = drawReport(drawn, says('x'));
      return [...svg.matchAll(/<text x="([\d.]+)"[^>]*text-anchor="middle"[^>]*>\d<\/text>/g)].map((each) =>
        Number(each[1]),
      );
    };
    const eighths = placesOf(even);
    // definition: in 2+2+3/8 beats begin at the first, third and fifth of seven eighths
    expect(placesOf(uneven).slice(0, 3)).toEqual([eighths[0], eighths[2], eighths[4]]);
  });

  it('[LI37] is ink on paper with one accent, and stays a page for a long take', () => {
    const colours = new Set([...draw('x').matchAll(/#[0-9a-f]{3,6}\b/gi)].map(([colour]) => colour));
    expect([...colours].toSorted()).toEqual(Object.values(COLOURS).toSorted());
    const bars = Array.from({ length: 200 }, (_, i) => ({ timeSeconds: Seconds(2.4 * i), bpm: Bpm(100) }));
    const long = { ...report, tempo: bars, playedBars: bars.map((_, i) => (i % 8) + 1) };
    const svg = drawReport(long, says('x'));
    // definition: eight rows of four bars are drawn
    expect(svg).toContain('168 bars more');
  });
});
