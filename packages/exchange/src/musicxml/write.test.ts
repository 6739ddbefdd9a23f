import {
  Bpm,
  childOf,
  childrenOf,
  descend,
  type Feel,
  formatPattern,
  LeadDb,
  levelDbToVelocity,
  type Mark,
  meter,
  parsePattern,
  readXml,
  type Voice,
  velocityToLevelDb,
  type XmlElement,
} from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLesson, exerciseOn, lessonOf, swingLesson } from '../../test/lessons.ts';
import { simplestRatio } from './directions.ts';
import { levelDbToDynamicsPercent } from './note.ts';
import { readMusicXml } from './read.ts';
import { writeMusicXml } from './write.ts';

function rootOf(text: string): XmlElement {
  const { root } = readXml(text);
  if (!root) throw new Error('not well formed');
  return root;
}

function measuresOf(text: string): readonly XmlElement[] {
  return childrenOf(childOf(rootOf(text), 'part'), 'measure');
}

function notesOf(text: string): readonly XmlElement[] {
  return measuresOf(text).flatMap((measure) => childrenOf(measure, 'note'));
}

/** The notes of one bar for one voice alone. */
function barOf(voice: Voice, text: string, meterText = '4/4'): readonly XmlElement[] {
  const lesson = lessonOf({ meter: meter(meterText), exercises: [exerciseOn(voice, text)] });
  return notesOf(writeMusicXml(lesson));
}

function beamsOf(note: XmlElement): readonly string[] {
  return childrenOf(note, 'beam').map((beam) => beam.text);
}

/** Voice, a mark for it, display place, head, General MIDI key counted from 1. */
const PLACES: readonly (readonly [Voice, Mark, string, string, number])[] = [
  // published: MusicXML 4.0 percussion tutorial (bass clef A2, E3, B3 are F4, C5, G5): bass drum, snare, hi-hat
  ['bass', 'x', 'F4', 'normal', 37],
  ['snare', 'x', 'C5', 'normal', 39],
  ['hihat', 'x', 'G5', 'x', 43],
  // published: MEI-GMD mapping, column "note US": side stick, hi-hat foot, crash; General MIDI keys 37, 44, 49
  ['snare', 's', 'C5', 'x', 38],
  ['hihat-foot', 'x', 'D4', 'x', 45],
  ['crash', 'x', 'A5', 'x', 50],
  // published: timucua.com, rhythm 3: ride on the top line; General MIDI 51, bell 53
  ['ride', 'x', 'F5', 'x', 52],
  ['ride', 'b', 'F5', 'diamond', 54],
  // common practice: open hi-hat where the closed one is, rim shot at the snare, toms on E5, D5 and A4
  ['hihat', 'o', 'G5', 'x', 47],
  ['snare', 'r', 'C5', 'slashed', 41],
  ['tom-high', 'x', 'E5', 'normal', 49],
  ['tom-mid', 'x', 'D5', 'normal', 48],
  ['tom-low', 'x', 'A4', 'normal', 44],
];

const SWINGS: readonly (readonly [string, Feel, readonly string[]])[] = [
  // standard: MusicXML 4.0, swing: straight for none; 2 and 1 for triplet swing; lowest terms (3:2, not 6:4)
  ['even', { kind: 'even' }, ['straight']],
  ['1:1', { kind: 'ratio', ratio: 1, of: 'eighths' }, ['straight']],
  ['2:1', { kind: 'ratio', ratio: 2, of: 'eighths' }, ['first 2', 'second 1', 'swing-type eighth']],
  ['1.5:1', { kind: 'ratio', ratio: 1.5, of: 'sixteenths' }, ['first 3', 'second 2', 'swing-type 16th']],
  ['1.8:1', { kind: 'ratio', ratio: 1.8, of: 'eighths' }, ['first 9', 'second 5', 'swing-type eighth']],
];

const TEMPI: readonly (readonly [string, string, string])[] = [
  // standard: MusicXML 4.0, sound tempo: quarter notes a minute in every meter; 90 quarters are 60 dotted ones
  ['4/4', 'quarter', '90'],
  ['12/8', 'dotted quarter', '60'],
  ['2/2', 'half', '45'],
  ['7/8', 'eighth', '180'],
  ['2+2+3/8', 'eighth', '180'],
];

describe('MusicXML, element by element', () => {
  it.each(PLACES)(
    '[EX43] writes %s "%s" at %s with the head and the instrument of the drum set',
    (voice, mark, place, head, key) => {
      const text = writeMusicXml(lessonOf({ exercises: [exerciseOn(voice, `${mark} . . .`)] }));
      const [note] = notesOf(text);
      const unpitched = childOf(note, 'unpitched');
      const at = `${childOf(unpitched, 'display-step')?.text}${childOf(unpitched, 'display-octave')?.text}`;
      expect([at, childOf(note, 'notehead')?.text ?? 'normal']).toEqual([place, head]);
      const id = childOf(note, 'instrument')?.attributes['id'];
      const part = descend(rootOf(text), 'part-list', 'score-part');
      const midi = childrenOf(part, 'midi-instrument').find((each) => each.attributes['id'] === id);
      expect(childrenOf(part, 'score-instrument').map((each) => each.attributes['id'])).toEqual([id]);
      // standard: MusicXML 4.0: midi-unpitched counts keys from 1; drums are on channel 10
      expect([childOf(midi, 'midi-channel')?.text, childOf(midi, 'midi-unpitched')?.text]).toEqual([
        '10',
        `${key}`,
      ]);
    },
  );

  it('[EX44] writes a triplet as three in the time of two, from its first note or rest to its last', () => {
    const notes = barOf('snare', 'xxx .x. . .').slice(0, 6);
    for (const note of notes) {
      const modification = childOf(note, 'time-modification');
      // standard: MusicXML 4.0, tuplet-element-regular: each note of a triplet has 3 in the time of 2
      expect([
        childOf(modification, 'actual-notes')?.text,
        childOf(modification, 'normal-notes')?.text,
      ]).toEqual(['3', '2']);
    }
    const tuplets = notes.map((note) => descend(note, 'notations', 'tuplet')?.attributes['type'] ?? null);
    // standard: same example: start on the first, stop on the last
    expect(tuplets).toEqual(['start', null, 'stop', 'start', null, 'stop']);
    const bracketed = notes.map(
      (note) => descend(note, 'notations', 'tuplet')?.attributes['bracket'] ?? null,
    );
    // common practice: a bracket where no beam shows the group
    expect(bracketed).toEqual(['no', null, null, 'yes', null, null]);
  });

  it('[EX45] fills the bar in every voice, hands up, then feet down after a backup of the bar', () => {
    fc.assert(
      fc.property(anyLesson, (lesson) => {
        const measures = measuresOf(writeMusicXml(lesson));
        const divisions = Number(descend(measures[0], 'attributes', 'divisions')?.text);
        const bar = String((lesson.meter.bar.num * 4 * divisions) / lesson.meter.bar.den);
        for (const measure of measures) {
          const backup = childrenOf(measure, 'backup').map((each) => childOf(each, 'duration')?.text);
          const notes = childrenOf(measure, 'note').filter(
            (note) => !childOf(note, 'grace') && !childOf(note, 'chord'),
          );
          const voices = [...new Set(notes.map((note) => childOf(note, 'voice')?.text))];
          expect(backup).toEqual(voices.slice(1).map(() => bar));
          for (const voice of voices) {
            const mine = notes.filter((note) => childOf(note, 'voice')?.text === voice);
            const length = mine.reduce((sum, note) => sum + Number(childOf(note, 'duration')?.text), 0);
            expect(String(length)).toBe(bar);
            const stems = new Set(mine.flatMap((note) => childOf(note, 'stem')?.text ?? []));
            if (voice === '1' || voice === '2') {
              expect([...stems].filter((stem) => stem !== (voice === '1' ? 'up' : 'down'))).toEqual([]);
            } else expect(stems.size).toBe(1);
          }
        }
      }),
    );
  });

  it('[EX46] writes dynamics in percent of forte, which is velocity 90, louder for louder', () => {
    // standard: MusicXML 4.0, attribute dynamics: percent of forte, 90; so velocity 90 is 100 and 45 is 50
    expect(levelDbToDynamicsPercent(LeadDb(0))).toBe(100);
    expect(levelDbToDynamicsPercent(velocityToLevelDb(45))).toBe(50);
    expect(levelDbToDynamicsPercent(velocityToLevelDb(127))).toBe(141.11);
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 60 }), fc.integer({ min: 1, max: 100 }), (tenths, more) => {
        const [soft, loud] = [LeadDb(tenths / 10), LeadDb((tenths + more) / 10)];
        expect(levelDbToDynamicsPercent(loud)).toBeGreaterThan(levelDbToDynamicsPercent(soft));
        const velocity = levelDbToVelocity(soft);
        if (velocity < 127)
          expect(Math.abs((levelDbToDynamicsPercent(soft) * 90) / 100 - velocity)).toBeLessThan(1);
      }),
    );
    const dynamics = notesOf(writeMusicXml(swingLesson())).map((note) => note.attributes['dynamics']);
    expect(dynamics).toContain('100');
  });

  it.each(SWINGS)('[EX47] writes the swing of a feel of %s', (_name, feel, elements) => {
    const sounds = childrenOf(measuresOf(writeMusicXml({ ...swingLesson(), feel }))[0], 'direction').map(
      (each) => childOf(each, 'sound'),
    );
    const swing = childOf(
      sounds.find((sound) => sound !== undefined),
      'swing',
    );
    expect(swing?.children.map((each) => `${each.name} ${each.text}`.trim())).toEqual(elements);
  });

  it('[EX47] writes a ratio in lowest terms and reads it back within a hundredth', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 4, noNaN: true }), (ratio) => {
        const { num, den } = simplestRatio(ratio);
        expect(Math.abs(num / den - ratio)).toBeLessThan(0.01);
        // definition: any ratio lies within 1/(2·50) of a fiftieth
        expect(den).toBeLessThanOrEqual(51);
        const text = writeMusicXml({ ...swingLesson(), feel: { kind: 'ratio', ratio, of: 'eighths' } });
        const { feel } = readMusicXml(text);
        const read = feel?.kind === 'ratio' ? feel.ratio : 1;
        expect(Math.abs(read - ratio)).toBeLessThan(0.01);
      }),
      { numRuns: 30 },
    );
  });

  it.each(TEMPI)('[EX48] marks the tempo of %s by its beat', (text, unit, perMinute) => {
    const lesson = lessonOf({
      meter: meter(text),
      tempo: { startBpm: Bpm(90), goalBpm: Bpm(90), stepBpm: Bpm(5) },
    });
    const direction = childrenOf(measuresOf(writeMusicXml(lesson))[0], 'direction')[0];
    const metronome = descend(direction, 'direction-type', 'metronome');
    const dotted = childOf(metronome, 'beat-unit-dot')
      ? 'dotted quarter'
      : childOf(metronome, 'beat-unit')?.text;
    expect([dotted, childOf(metronome, 'per-minute')?.text]).toEqual([unit, perMinute]);
    expect(childOf(direction, 'sound')?.attributes['tempo']).toBe('90');
  });

  it('[EX49] beams each level from its first note to its last, with hooks for lone ones', () => {
    // standard: MusicXML 4.0, beam: level 1 eighths, level 2 sixteenths; a lone level has a hook
    expect(barOf('snare', 'xxxx x.xx xx.x .').slice(0, 10).map(beamsOf)).toEqual([
      ['begin', 'begin'],
      ['continue', 'continue'],
      ['continue', 'continue'],
      ['end', 'end'],
      ['begin'],
      ['continue', 'begin'],
      ['end', 'end'],
      ['begin', 'forward hook'],
      ['continue'],
      ['end', 'backward hook'],
    ]);
  });

  it('[EX60] writes touch and ornaments: accent, ghost, flam, drag, buzz, open, hand', () => {
    const lesson = lessonOf({
      groove: [{ voice: 'hihat-foot', pattern: parsePattern('o . . .') }],
      exercises: [{ ...exerciseOn('snare', 'Xg f d b'), sticking: ['R', 'L', 'R', 'L', 'R'] }],
    });
    const notes = notesOf(writeMusicXml(lesson));
    const hands = notes.filter((note) => childOf(note, 'voice')?.text === '1' && !childOf(note, 'rest'));
    const [accented, ghost, grace, , first, second, , buzz] = hands;
    expect(descend(accented, 'notations', 'articulations', 'accent')).toBeDefined();
    // standard: MusicXML 4.0, notehead: parentheses
    expect(childOf(ghost, 'notehead')).toMatchObject({ text: 'normal', attributes: { parentheses: 'yes' } });
    expect(childOf(grace, 'grace')?.attributes).toEqual({ slash: 'yes' });
    expect([first, second].map((note) => note && childOf(note, 'grace') && beamsOf(note))).toEqual([
      ['begin', 'begin'],
      ['end', 'end'],
    ]);
    // standard: MusicXML 4.0, tremolo: unmeasured, with 0 marks; its default glyph is buzzRoll
    expect(descend(buzz, 'notations', 'ornaments', 'tremolo')).toMatchObject({
      text: '0',
      attributes: { type: 'unmeasured' },
    });
    const hand = hands
      .map((note) => descend(note, 'notations', 'technical', 'fingering')?.text)
      .filter((text) => text);
    expect(hand).toEqual(['R', 'L', 'R', 'L', 'R']);
    const foot = notes.find((note) => childOf(note, 'voice')?.text === '2');
    expect(descend(foot, 'notations', 'technical', 'open')).toBeDefined();
  });

  it('[EX61] numbers exercises, sets each on a new line and closes it; the text depends on nothing else', () => {
    const lesson = swingLesson();
    const measures = measuresOf(writeMusicXml(lesson));
    const marks = measures.map((measure) =>
      childrenOf(measure, 'direction')
        .map((each) => descend(each, 'direction-type', 'rehearsal')?.text)
        .filter((text) => text),
    );
    expect(marks).toEqual([['1'], ['2']]);
    expect(measures.map((measure) => descend(measure, 'barline', 'bar-style')?.text)).toEqual([
      'light-light',
      'light-heavy',
    ]);
    expect(measures.map((measure) => childOf(measure, 'print')?.attributes['new-system'])).toEqual([
      undefined,
      'yes',
    ]);
    expect(writeMusicXml(lesson)).toBe(writeMusicXml(lesson));
    expect(writeMusicXml(lesson)).not.toContain('encoding-date');
    expect(writeMusicXml(lesson, { date: '2026-11-25' })).toContain(
      '<encoding-date>2026-11-25</encoding-date>',
    );
  });

  it('[EX62] writes any title: escaped where XML wants it, replaced where XML has no place for it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (title) => {
        const read = readMusicXml(writeMusicXml({ ...swingLesson(), title })).title ?? '';
        const allowed = title.replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '\ufffd');
        expect(read).toBe(allowed.trim());
      }),
    );
    // standard: XML 1.0, 2.2: U+0007 is no character; 2.4: & and < are escaped
    expect(writeMusicXml({ ...swingLesson(), title: 'R&B <\u0007>' })).toContain(
      '<work-title>R&amp;B &lt;\ufffd&gt;</work-title>',
    );
  });

  it('[EX63] writes the exercises asked for, with or without the groove, and the groove where there are none', () => {
    const lesson = swingLesson();
    const voices = (text: string) => new Set(readMusicXml(text).strokes.map((stroke) => stroke.voice));
    expect(
      readMusicXml(writeMusicXml(lesson, { exercises: [2] })).exercises.map((each) => each.number),
    ).toEqual([2]);
    expect(voices(writeMusicXml(lesson, { groove: false }))).toEqual(new Set(['snare']));
    const [alone] = readMusicXml(writeMusicXml({ ...lesson, exercises: [] })).exercises;
    expect(alone?.parts.map((part) => `${part.voice}: ${formatPattern(part.pattern)}`)).toEqual([
      'ride: x x.x x x.x',
      'hihat-foot: . x . x',
      'bass: g g g g',
    ]);
    expect(() => writeMusicXml(lesson, { exercises: [3] })).toThrow(RangeError);
  });
});
