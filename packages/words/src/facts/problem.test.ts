import { parseLesson } from '@shedbook/core';
import { readMidi, readMusicXml } from '@shedbook/exchange';
import { describe, expect, it } from 'vitest';
import { BROKEN_LESSONS } from '../../../../internal/testing/broken-lessons.data.ts';
import { ENGLISH } from '../english/english.ts';
import { GERMAN } from '../german/german.ts';
import { formatByteProblem, formatProblem, type SayableProblem } from './problem.ts';

/** Lessons in which something is wrong, each in its own way. */
const FAULTY = [
  'title: [',
  'title: a\n\tmeter: 4/4\n',
  'title: a\ntitle: b\n',
  'title: a: b\n',
  'title: a\nmeter\ntempo: 80\n',
  'title: "a\n',
  'title: *x\n',
  '- a\n',
  'title: ""\n',
  'title: 5\nby: []\nversion: 9\n',
  'title: a\nversion: x\nmetre: 4/4\nzebra: 1\n',
  'title: a\nmeter: five\nfeel: swingy\ntempo: fast\n',
  'title: a\ntempo: {start: 120, goal: 80}\n',
  'title: a\ntempo: {start: 1000}\n',
  'title: a\nsetUp: lefthanded\nlead: rode\ncomping: 3\n',
  'title: a\ngroove: {ride: 1, bass: {pattern: x x x x, level: loud}, snare: {level: 3}}\n',
  'title: a\ngroove: {bass: x x x x, ride: "x x"}\nlead: hihat\n',
  'title: a\ngroove: []\nlimbs: {ride: nose}\nbalance: {ride: 99}\n',
  'title: a\nexercises:\n  - x.. ..y x.x ...\n  - xxxxx x x x\n  - x x x\n  - x x x x x\n  - ""\n  - 3\n',
  'title: a\nexercises:\n  - "x x x x |"\n  - {}\n  - { pattern: {} }\n  - { pattern: x x x x, sticking: R Q L }\n',
  'title: a\nexercises:\n  - { pattern: x x x x, sticking: R L }\n  - { pattern: { snare: x x x x, bass: "x x x x | x x x x" } }\n',
  'title: a\nexercises:\n  - x x x x\n  - x x x x\n  - o x x x\n  - 1 x x x\n',
  'title: a\nexercises: 3\nvocabulary: 3\nforms: 3\nlayers: 3\nsheet: 3\n',
  'title: a\nvocabulary: [..x, ..x, "nope nope", {cell: 3}]\nexercises: [xx. ... ... ...]\n',
  'title: a\nforms: {x: {sections: []}, y: {sections: 3}, z: {sections: [{bars: 3}]}}\n',
  'title: a\nforms: {x: {sections: [{pattern: 4, time: 2}]}, y: {repeat: x, sections: [{}]}}\n',
  'title: a\nforms: {x: {sections: [{pattern: 2, ending: kazoo}, {pattern: 2, ending: {voices: crash, beat: 9, cell: ...}}]}}\n',
  'title: a\nlayers: [ride, kazoo, []]\nsheet: {paper: A5, scale: 9, counts: yes, staff: wide}\n',
  'title: a\ncompose: {count: -1, limits: {strokes: {least: 3, most: 1}, beats: {x: []}, start: [q]}}\n',
  'title: a\ngroove: {hihat: x x x x, hihat-foot: . x . x}\n',
  'title: a\ngroove: {ride: x x x x, hihat: x x x x}\ncomping: tom-high\nexercises: ["{ snare: x, tom-high: x }"]\n',
  'title: a\ngroove: { ride: x x x x }\nexercises:\n  - { pattern: { snare: x . . ., tom-high: x . . . } }\n',
];

function both(problem: SayableProblem): readonly [string, string] {
  return [formatProblem(problem, ENGLISH), formatProblem(problem, GERMAN)];
}

describe('problems', () => {
  it('[WO2] of a lesson can be said in every language, each with all its values', () => {
    const texts = [...FAULTY, ...BROKEN_LESSONS.map((each) => each.text)];
    const problems = texts.flatMap((text) => parseLesson(text, 'x').problems);
    expect(problems.length).toBeGreaterThan(130);
    for (const problem of problems) {
      const [english, german] = both(problem);
      // definition: a place that is not filled in is said in braces
      expect(english).toMatch(/^x:\d+:\d+: (error|warning): .*found .+, expected .+$/);
      expect(german).toMatch(/^x:\d+:\d+: (Fehler|Warnung): .*gefunden: .+; erwartet: .+$/);
      for (const said of [english, german]) expect(said).not.toMatch(/\{\$|\uFFFD|undefined/);
    }
  });

  it('[WO1] are said with their place, their values and a likely repair', () => {
    const [missing] = parseLesson('title: T\nexercises: [x.. ..x x.x]\n', 'x').problems;
    expect(missing && both(missing)).toEqual([
      'x:2:13: error: exercises[1]: found 3 beats, expected 4 beats in a bar of 4/4 (fill the bar: "." is a silent beat)',
      'x:2:13: Fehler: exercises[1]: gefunden: 3 Schläge; erwartet: 4 Schläge in einem 4/4-Takt (den Takt füllen: „.“ ist ein stummer Schlag)',
    ]);
    const clash = 'title: T\nlimbs: {snare: lead hand}\ngroove: {ride: x x x x}\nexercises: [x . . .]\n';
    const [conflict] = parseLesson(clash, 'x').problems;
    expect(conflict && both(conflict)).toEqual([
      'x:4:13: warning: exercises[1]: found ride and snare for the lead hand at bar 1, beat 1, place 1, expected one stroke at a time for a limb (write a sticking, or name the limb of a voice under "limbs")',
      'x:4:13: Warnung: exercises[1]: gefunden: Ride und Snare für die führende Hand in Takt 1, Schlag 1, Stelle 1; erwartet: ein Schlag zugleich für jede Hand und jeden Fuß (Hände schreiben, oder unter „limbs“ sagen, was eine Stimme spielt)',
    ]);
  });

  it('[WO1] [LE7009] of a foot that is not heard are said plainly', () => {
    const shut = 'title: T\ngroove: {hihat: x x x x, hihat-foot: . x . x}\n';
    const [problem] = parseLesson(shut, 'x').problems;
    expect(problem && formatProblem(problem, GERMAN)).toBe(
      'x:2:38: Warnung: groove.hihat-foot: gefunden: der Hi-Hat-Fuß in Takt 1, Schlag 2, Stelle 1, wo die Hand dasselbe Hi-Hat geschlossen schlägt; erwartet: den Fuß, wo die Hand anderswo oder das Hi-Hat offen schlägt, denn solange er die Becken zuhält, ist nichts von ihm zu hören',
    );
  });

  it('[WO1] of what the composer is told are said by bounds and kinds', () => {
    const said = (compose: string) => {
      const [problem] = parseLesson(`title: T\ncompose: ${compose}\n`, 'x').problems;
      return problem && formatProblem(problem, ENGLISH).replace(/^.*found /, 'found ');
    };
    // definition: the schema of these keys
    expect(said('{count: 0}')).toBe('found 0, expected 1 or more');
    expect(said('{bars: 9}')).toBe('found 9, expected 8 or less');
    expect(said('{limits: {handSpeed: 0}}')).toBe('found 0, expected more than 0');
    expect(said('{limits: {overBarLine: 3}}')).toBe('found 3, expected true or false');
    expect(said('{limits: {beats: {x: []}}}')).toBe('found an empty list, expected the number of a beat');
  });

  it('[WO1] of files from elsewhere are said in the language too', () => {
    const [cut] = readMidi(Uint8Array.from([0x4d, 0x54])).problems;
    expect(cut && formatByteProblem('take.mid', cut, GERMAN)).toBe(
      'take.mid: Byte 0: Fehler: gefunden: 2 Bytes vor dem Ende der Daten; erwartet: 14 Bytes für den Kopf der Datei (die Datei ist abgeschnitten oder beschädigt: neu kopieren oder ausgeben)',
    );
    // standard: XML 1.0, 3: an end tag names the element that it ends; 2.4: an ampersand begins a reference
    const [ended] = readMusicXml('<a>\n<b></a>', 'x').problems;
    expect(ended && both(ended)).toEqual([
      'x:2:8: error: found an end tag that does not fit <b> of line 2, expected well-formed XML',
      'x:2:8: Fehler: gefunden: ein End-Tag, das nicht zu <b> aus Zeile 2 passt; erwartet: wohlgeformtes XML',
    ]);
    const [meant] = readMusicXml('<a>kick & snare</a>', 'x').problems;
    expect(meant && both(meant)).toEqual([
      'x:1:9: error: found an "&" that stands for no sign; one that is meant is written "&amp;", expected well-formed XML',
      'x:1:9: Fehler: gefunden: ein „&“, das für kein Zeichen steht; eines, das gemeint ist, wird „&amp;“ geschrieben; erwartet: wohlgeformtes XML',
    ]);
    const [root] = readMusicXml('<html/>', 'x').problems;
    expect(root && formatProblem(root, GERMAN)).toBe(
      'x:1:1: Fehler: gefunden: das Wurzelelement html; erwartet: score-partwise (das ist keine MusicXML-Partitur)',
    );
  });
});
