import { type Exercise, formatPattern, type Voice } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inEnglish } from '../../../../internal/testing/in-english.ts';
import { exerciseOn, lessonOf, swingLesson } from '../../test/lessons.ts';
import { PERCUSSION_TUTORIAL } from '../../test/percussion-tutorial.ts';
import { schemaValidator } from '../../test/schema.ts';
import { type MusicXmlReading, readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

function textOf(reading: MusicXmlReading, voice: Voice): string | undefined {
  const part = reading.exercises[0]?.parts.find((each) => each.voice === voice);
  return part && formatPattern(part.pattern);
}

/** How many lines of a text begin up to one of its characters. */
function linesOf(text: string, at: number): number {
  return text.slice(0, at).split('\n').length;
}

function problemsOf(text: string): readonly string[] {
  return readMusicXml(text, 'sheet.musicxml').problems.map(inEnglish);
}

/** A score of one drum part with the given content of its first measure, which starts in line 4. */
function score(
  measure: string,
  attributes = '<divisions>2</divisions><time><beats>4</beats><beat-type>4</beat-type></time>',
): string {
  return `<score-partwise version="4.0">
<part-list><score-part id="P1"><part-name>Drums</part-name></score-part></part-list>
<part id="P1"><measure number="1"><attributes>${attributes}<clef><sign>percussion</sign></clef></attributes>
${measure}
</measure></part>
</score-partwise>`;
}

function at(step: string, octave: number, head = 'normal', more = ''): string {
  return `<note><unpitched><display-step>${step}</display-step><display-octave>${octave}</display-octave></unpitched><duration>2</duration><voice>1</voice><type>quarter</type><notehead>${head}</notehead>${more}</note>`;
}

/** Texts that cannot be read as they are, and what is said of them. */
const FAULTS: readonly (readonly [string, string, string])[] = [
  [
    'no XML at all',
    'MThd',
    'sheet.musicxml:1:6: error: found something outside of the one element that holds all the others, expected well-formed XML',
  ],
  [
    'a tag that is not closed',
    '<score-partwise>\n <part></score-partwise>',
    'sheet.musicxml:2:25: error: found an end tag that does not fit <part> of line 2, expected well-formed XML',
  ],
  [
    'a score by time',
    '<score-timewise/>',
    'sheet.musicxml:1:1: error: found the root element score-timewise, expected score-partwise (save it part by part (partwise))',
  ],
  [
    'another document',
    '<?xml version="1.0"?>\n<!-- a page -->\n  <html/>',
    'sheet.musicxml:3:3: error: found the root element html, expected score-partwise (this is not a MusicXML score)',
  ],
  [
    'a note without duration',
    score('\n  <note><rest/></note>'),
    'sheet.musicxml:5:3: error: part P1: found a note without duration, expected a number of divisions',
  ],
  [
    'a duration that is no number',
    score('<backup><duration>two</duration></backup>'),
    'sheet.musicxml:4:1: error: part P1: found the duration "two", expected a number of divisions',
  ],
  [
    'no divisions',
    score(
      '<note><rest/><duration>8</duration></note>',
      '<time><beats>4</beats><beat-type>4</beat-type></time>',
    ),
    'sheet.musicxml:4:1: error: part P1: found no divisions, expected divisions in the attributes of the first measure',
  ],
  [
    'a free time',
    score('', '<divisions>2</divisions><time><senza-misura/></time>'),
    'sheet.musicxml:3:71: error: part P1: found a time without beats, expected one meter such as 4/4 or 6/8',
  ],
  [
    'a backup over the bar line',
    score('<backup><duration>1</duration></backup>'),
    'sheet.musicxml:4:1: warning: part P1: found a backup over the bar line, expected a backup inside the bar (it was read as a backup to the bar line)',
  ],
  [
    'a stroke after the bar',
    score(`<forward><duration>8</duration></forward>${at('C', 5)}`),
    'sheet.musicxml:4:42: warning: part P1: found a stroke after the end of a bar of 4/4, expected strokes inside the bar (it is left out)',
  ],
  [
    'a place where no voice stands',
    score(at('C', 4)),
    'sheet.musicxml:4:1: warning: part P1: found 1 note of an unknown instrument, expected a voice of the drum set (these notes are left out)',
  ],
  [
    'a pitch',
    score('<note><pitch><step>C</step><octave>4</octave></pitch><duration>2</duration></note>'.repeat(2)),
    'sheet.musicxml:4:1: warning: part P1: found 2 notes of definite pitch, expected a voice of the drum set (these notes are left out)',
  ],
  [
    'nine in the time of eight',
    score(
      at('C', 5).replace('>2<', '>1<').repeat(2),
      '<divisions>9</divisions><time><beats>4</beats><beat-type>4</beat-type></time>',
    ),
    'sheet.musicxml:4:186: warning: measure 1: found a snare stroke at 1/36 of a whole note, expected one stroke a voice on 1 to 8 places a beat (it is left out)',
  ],
  [
    'a grace note alone',
    score(
      '<note><grace/><unpitched><display-step>C</display-step><display-octave>5</display-octave></unpitched></note>',
    ),
    'sheet.musicxml:4:1: warning: part P1: found 1 grace note of the snare without its stroke, expected a stroke of the snare after it (grace notes alone are left out)',
  ],
];

describe('MusicXML of other programs', () => {
  it('[EX52] reads the percussion tutorial of the standard: voices by their keys, in a bass clef', () => {
    const reading = readMusicXml(PERCUSSION_TUTORIAL, 'tutorial.musicxml');
    // standard: MusicXML 4.0, percussion tutorial: its engraved example
    expect(textOf(reading, 'crash')).toBe('x . . . | . . . .');
    expect(textOf(reading, 'hihat')).toBe('.x xx xx xx | xx xx xx xx');
    expect(textOf(reading, 'snare')).toBe('. x . x | . x . x');
    expect(textOf(reading, 'bass')).toBe('x . xx .x | x . xx .x');
    expect([reading.meter?.text, reading.bpm, reading.exercises.length]).toEqual(['4/4', 120, 1]);
    // standard: same tutorial: the cowbell is General MIDI key 56
    expect(textOf(reading, 'cowbell')).toMatch(/x/);
    expect(reading.problems).toEqual([]);
    expect(schemaValidator()(PERCUSSION_TUTORIAL, 'tutorial.musicxml')).toEqual([]);
  });

  it('[EX53] reads voices by place and head where a file names no instruments', () => {
    const reading = readMusicXml(score(at('F', 5, 'x') + at('C', 5) + at('C', 5, 'x') + at('F', 4)));
    // published: staff positions collected in the drum-set literature: ride F5 x, snare C5, cross-stick C5 x, bass F4
    expect(textOf(reading, 'ride')).toBe('x . . .');
    expect(textOf(reading, 'snare')).toBe('. x s .');
    expect(textOf(reading, 'bass')).toBe('. . . x');
    const open = readMusicXml(
      score(at('G', 5, 'x') + at('G', 5, 'x', '<notations><technical><open/></technical></notations>')),
    );
    // common practice: a small o over a hi-hat is open
    expect(textOf(open, 'hihat')).toBe('x o . .');
  });

  it('[EX54] reads tied notes once, skips cue notes, and reads a roll of three strokes as a buzz', () => {
    const tie = (type: string) => `<tie type="${type}"/>`;
    const tied =
      at('C', 5).replace('</duration>', `</duration>${tie('start')}`) +
      at('C', 5).replace('</duration>', `</duration>${tie('stop')}`);
    const cue = at('C', 5).replace('<note>', '<note><cue/>');
    const roll = at(
      'C',
      5,
      'normal',
      '<notations><ornaments><tremolo type="single">3</tremolo></ornaments></notations>',
    );
    // standard: MusicXML 4.0: tie stop continues a note; a cue note is silent
    expect(textOf(readMusicXml(score(tied + cue + roll)), 'snare')).toBe('x . b .');
  });

  it('[EX69] reads a pickup as the end of its bar', () => {
    const next = `</measure><measure number="1">${at('F', 4)}`;
    const pickup = score(at('C', 5) + next).replace(
      '<measure number="1"><attributes>',
      '<measure number="0" implicit="yes"><attributes>',
    );
    const reading = readMusicXml(pickup);
    // standard: MusicXML 4.0, attribute implicit: pickup measures; common practice: a pickup ends on the bar line
    expect([textOf(reading, 'snare'), textOf(reading, 'bass')]).toEqual([
      '. . . x | . . . .',
      '. . . . | x . . .',
    ]);
  });

  it('[EX55] ends at a change of meter and says so', () => {
    const two = PERCUSSION_TUTORIAL.replace(
      '<measure number="2">',
      '<measure number="2"><attributes><time><beats>3</beats><beat-type>4</beat-type></time></attributes>',
    );
    const reading = readMusicXml(two, 'two.musicxml');
    expect(textOf(reading, 'snare')).toBe('. x . x | . . . .');
    expect(reading.problems.map(inEnglish)).toContain(
      'two.musicxml:5:1: warning: measure 2: found a change to 3/4, expected 4/4 throughout (this bar and all after it are left out)',
    );
  });

  it.each(FAULTS)('[EX56] says where and what of %s', (_what, text, message) => {
    expect(problemsOf(text)).toEqual([message]);
  });

  it('[EX57] loads nothing from outside and expands no entity into a bomb', () => {
    const secret = new URL('../../package.json', import.meta.url).href;
    const titled = (entities: string, title: string) =>
      `<!DOCTYPE score-partwise [${entities}]><score-partwise><work><work-title>${title}</work-title></work></score-partwise>`;
    const outside = readMusicXml(titled(`<!ENTITY x SYSTEM "${secret}">`, 'Seen: &x;'));
    expect(outside.title ?? '').not.toContain('shedbook');
    const nested = 'bcdefghijklm'.replaceAll(/./g, (letter) => {
      const inner = `&${String.fromCharCode(letter.charCodeAt(0) - 1)};`;
      return `<!ENTITY ${letter} "${inner.repeat(10)}">`;
    });
    const bomb = readMusicXml(titled(`<!ENTITY a "aaaaaaaaaa">${nested}`, '&m;'));
    expect(JSON.stringify(bomb).length).toBeLessThan(10_000);
  });

  it('[EX59] keeps hands, names and numbers of exercises', () => {
    const lesson = lessonOf({
      exercises: [
        { ...exerciseOn('snare', 'xx xx . .', 7), name: 'Paradiddle', sticking: ['R', 'L', 'R', 'R'] },
        exerciseOn('snare', 'x . . .', 9),
      ],
    });
    const { exercises, title, by } = readMusicXml(writeMusicXml(lesson));
    expect(exercises).toMatchObject([
      { number: 7, name: 'Paradiddle', sticking: ['R', 'L', 'R', 'R'] },
      { number: 9, name: null, sticking: null },
    ]);
    expect([title, by]).toEqual(['First swing', 'Oda Lindqvist-Reyes']);
  });

  it('[EX64] reads every measure that damage did not touch, and names the place where a text stops being one', () => {
    const [one, two] = swingLesson().exercises;
    const exercises = Array.from({ length: 12 }, (_, i) => ({
      ...((i % 2 ? one : two) as Exercise),
      number: i + 1,
    }));
    const whole = writeMusicXml({ ...swingLesson(), exercises });
    const measures = [...whole.matchAll(/<measure [\s\S]*?<\/measure>/g)];
    // from its first note on: what stands before it holds for later measures, too
    const inside = ([text]: RegExpMatchArray) => text.indexOf('<note') + 1;
    const barred = (text: string) =>
      readMusicXml(text).strokes.map(({ bar, inBar, voice }) => `${bar} ${inBar.num}/${inBar.den} ${voice}`);
    const others = (strokes: readonly string[], bar: number) =>
      strokes.filter((stroke) => !stroke.startsWith(`${bar} `));
    const before = barred(whole);
    const damage = fc.record({
      bar: fc.nat(measures.length - 1),
      from: fc.nat(10_000),
      cut: fc.nat(60),
      put: fc.oneof(
        fc.string({ maxLength: 12 }),
        fc.constantFrom('99999', '0', '-1', '0.01', '<note>', '</note>', '<rest/>', '&amp;', '</measure>'),
      ),
    });
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(damage, ({ bar, from, cut, put }) => {
        const measure = measures[bar] as RegExpExecArray;
        const start = measure.index + inside(measure);
        const room = measure[0].length - inside(measure) - '</measure>'.length;
        const at = start + (from % room);
        const text = whole.slice(0, at) + put + whole.slice(Math.min(start + room, at + cut));
        const { problems } = readMusicXml(text, 'sheet.musicxml');
        const broken = problems.find(({ code }) => code === 'xml-not-well-formed');
        // The place: not before the damage, and at most at the end.
        if (broken) expect(linesOf(text, at)).toBeLessThanOrEqual(broken.line);
        else if (!put.includes('measure')) expect(others(barred(text), bar)).toEqual(others(before, bar));
        seen[broken ? 'refused' : 'read'] += 1;
      }),
      { numRuns: 300 },
    );
    expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(20);
  });

  it('[EX64] refuses what is too large or too deep for a score of drums, with its place, and reads on past odd divisions', () => {
    const code = (text: string) =>
      readMusicXml(score(text)).problems.map((each) => [each.code, each.line])[0];
    // definition: 64 elements in each other, and 200,000 in all
    expect(code(`${'<a>'.repeat(70)}${'</a>'.repeat(70)}`)).toEqual(['xml-not-well-formed', 4]);
    expect(code('<rest/>\n'.repeat(200_000))).toEqual(['xml-not-well-formed', expect.any(Number)]);
    const numbers = fc.array(fc.constantFrom('1', '7', '16383', '999999999', '0.00001', '3.14159'), {
      minLength: 4,
      maxLength: 8,
    });
    fc.assert(
      fc.property(numbers, (each) => {
        const mixed = each.map(
          (text) =>
            `<attributes><divisions>${text}</divisions></attributes><forward><duration>${text.replace('0', '1')}</duration></forward>`,
        );
        expect(readMusicXml(score(mixed.join('') + at('C', 5))).exercises.length).toBeLessThanOrEqual(1);
      }),
    );
  });
});
