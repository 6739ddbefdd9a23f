import { Ticks } from '@shedbook/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byteProblemInEnglish } from '../../../../internal/testing/in-english.ts';
import { decodeSmf } from './decode.ts';
import { encodeSmf } from './encode.ts';
import { pairNotes } from './pair-notes.ts';
import { readMidi } from './read.ts';
import type { Smf, SmfEvent } from './smf.ts';
import { decodeUtf8, encodeUtf8 } from './utf8.ts';

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text.replaceAll(/\s/g, '').match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}

// standard: RP-001 (SMF 1.0), the worked example in format 0 (string from memory, its pieces found elsewhere)
const WORKED_EXAMPLE = `
  4D546864 00000006 0000 0001 0060  4D54726B 0000003B
  00FF580404021808 00FF510307A120 00C005 00C12E 00C246 00923060 003C60 60914340 60904C20
  8140823040 003C40 00814340 00804C40 00FF2F00`;

/** A file of one track with the given body. */
function withTrack(body: string, header = '4D546864 00000006 0000 0001 0060'): Uint8Array {
  const track = bytesOf(body);
  const length = track.length.toString(16).padStart(8, '0');
  return bytesOf(`${header} 4D54726B ${length} ${body}`);
}

function firstProblem(bytes: Uint8Array): string | undefined {
  const problem = decodeSmf(bytes).problems[0];
  return problem && byteProblemInEnglish('take.mid', problem);
}

/** Bytes, and the message they get. */
const REFUSED_FILES: readonly (readonly [string, string])[] = [
  [
    '',
    'take.mid: byte 0: error: found an empty file, expected "MThd" (choose the Standard MIDI File itself)',
  ],
  [
    '52494646 00000000 0000 0000 0000',
    'take.mid: byte 0: error: found "RIFF", expected "MThd" (this is not a Standard MIDI File)',
  ],
  [
    '4D54',
    'take.mid: byte 0: error: found 2 bytes before the end of the data, expected 14 bytes of a header chunk (the file is cut short or damaged: copy or export it again)',
  ],
  [
    '4D546864 00000006 0002 0001 0060',
    'take.mid: byte 8: error: found format 2, expected format 0 or 1 (export it as a type 0 or type 1 file)',
  ],
  [
    '4D546864 00000006 0000 0001 E728',
    'take.mid: byte 12: error: found time code of 25 frames a second and 40 ticks a frame, expected ticks per quarter note (export it in musical time (beats))',
  ],
  [
    '4D546864 00000006 0000 0001 0000',
    'take.mid: byte 12: error: found 0 ticks per quarter note, expected 1 or more (export it again)',
  ],
  [
    '4D546864 00000006 0001 0002 0060 4D54726B 00000004 00FF2F00',
    'take.mid: byte 26: error: found the end of the file after 1 of 2 tracks, expected "MTrk" (the file is cut short: copy or export it again)',
  ],
  [
    '4D546864 00000006 0000 0001 0060 4D54726B 00000040 00FF2F00',
    'take.mid: byte 22: error: found 4 bytes before the end of the data, expected 64 bytes of "MTrk" chunk (the file is cut short or damaged: copy or export it again)',
  ],
];

/** Bytes, and the message they get. */
const REFUSED_TRACKS: readonly (readonly [string, string])[] = [
  [
    '00 24 5A',
    'take.mid: byte 23: error: found 0x24 where an event begins, expected a status byte from 0x80 up (the file is damaged: copy or export it again)',
  ],
  [
    '00 99 24 FF',
    'take.mid: byte 25: error: found 0xFF in an event, expected a data byte from 0x00 to 0x7F (the file is damaged: copy or export it again)',
  ],
  [
    '00 F4 00',
    'take.mid: byte 23: error: found status 0xF4, expected a channel, system exclusive or meta event (the file is damaged: copy or export it again)',
  ],
  [
    '00 FF51 02 07A1',
    'take.mid: byte 23: error: found a tempo event of 2 bytes, expected 3 bytes (the file is damaged: copy or export it again)',
  ],
  [
    '00 FF51 03 000000',
    'take.mid: byte 23: error: found a tempo of 0 µs per quarter note, expected 1 or more (the file is damaged: copy or export it again)',
  ],
  [
    '00 FF58 04 00020808',
    'take.mid: byte 23: error: found time signature 0/2^2, expected one such as 4/2^2 (the file is damaged: copy or export it again)',
  ],
  [
    '00 99 24',
    'take.mid: byte 25: error: found the end of the data, expected 1 byte of event data (the file is cut short or damaged: copy or export it again)',
  ],
];

describe('reading Standard MIDI Files', () => {
  it('[EX3] reads the worked example of the standard, running status and all', () => {
    const { file, problems } = decodeSmf(bytesOf(WORKED_EXAMPLE));
    expect(problems).toEqual([]);
    expect(file?.ticksPerQuarter).toBe(96);
    const events = file?.tracks[0]?.events ?? [];
    // standard: RP-001, same example: 4/4, 24 clocks a click; 500 000 µs a quarter
    expect(events[0]).toEqual({ kind: 'time-signature', ticks: 0, upper: 4, lower: 4, clocksPerClick: 24 });
    expect(events[1]).toEqual({ kind: 'tempo', ticks: 0, microsecondsPerQuarter: 500_000 });
    const notes = pairNotes(file as Smf).map((n) => [n.ticks, n.endTicks, n.channel, n.key, n.velocity]);
    // standard: RP-001, same example: channel 3 plays 48 and 60 at 0, channel 2 67 at 96, channel 1 76 at 192;
    // all end at 384
    expect(notes).toEqual([
      [0, 384, 3, 48, 96],
      [0, 384, 3, 60, 96],
      [96, 384, 2, 67, 64],
      [192, 384, 1, 76, 32],
    ]);
    expect(file?.tracks[0]?.endTicks).toBe(384);
  });

  it('[EX4] skips system exclusive, unknown meta events, controllers and unknown chunks', () => {
    const body = '00F0 03 7E7F F7  00FF7F 02 0102  00B0 07 7F  00E9 0040  10 99 24 5A  10 89 24 40  00FF2F00';
    const track = withTrack(body);
    const withChunk = Uint8Array.from([
      ...track.slice(0, 14),
      ...bytesOf('58595A21 00000002 AABB'),
      ...track.slice(14),
    ]);
    const { file, problems } = decodeSmf(withChunk);
    expect(problems).toEqual([]);
    // definition: delta times of 0x10 ticks twice
    expect(pairNotes(file as Smf)).toMatchObject([
      { ticks: Ticks(16), endTicks: Ticks(32), channel: 10, key: 36, velocity: 90 },
    ]);
  });

  it('[EX5] ends a note at a note-on of velocity 0', () => {
    // standard: MIDI 1.0: note-on with velocity 0 is a note-off
    const { file } = decodeSmf(withTrack('00 99 26 40  20 26 00  00FF2F00'));
    expect(pairNotes(file as Smf)).toMatchObject([{ ticks: 0, endTicks: 32, key: 38 }]);
  });

  it.each(REFUSED_FILES)('[EX6] refuses %s', (hexText, message) => {
    expect(decodeSmf(bytesOf(hexText)).file).toBeNull();
    expect(firstProblem(bytesOf(hexText))).toBe(message);
  });

  it.each(REFUSED_TRACKS)('[EX6] refuses a track of %s', (body, message) => {
    expect(decodeSmf(withTrack(body)).file).toBeNull();
    expect(firstProblem(withTrack(body))).toBe(message);
  });

  it('[EX7] reads a track without an end, or with bytes after it, and warns', () => {
    const open = decodeSmf(withTrack('00 99 24 5A'));
    expect(open.file?.tracks[0]?.events).toHaveLength(1);
    expect(open.problems).toMatchObject([{ severity: 'warning', code: 'midi-track-end', offset: 26 }]);
    const after = decodeSmf(withTrack('00FF2F00 00 99 24 5A'));
    expect(after.problems).toMatchObject([
      { severity: 'warning', found: { fact: 'midi-bytes-after-end', bytes: 4 } },
    ]);
  });

  it('[EX8] refuses a file that is larger than half an hour of any drum set, before it is read', () => {
    const { file, problems } = decodeSmf(new Uint8Array(500_001));
    expect([file, problems]).toMatchObject([null, [{ code: 'midi-size', found: { bytes: 500_001 } }]]);
  });

  it('[EX8] answers any bytes with a file or an error, and never throws', () => {
    const whole = [...bytesOf(WORKED_EXAMPLE)];
    const damaged = fc
      .tuple(fc.nat(whole.length - 1), fc.nat(255), fc.nat(whole.length))
      .map(([at, byte, cut]) => Uint8Array.from(whole.with(at, byte).slice(0, cut)));
    fc.assert(
      fc.property(fc.oneof(damaged, fc.uint8Array({ maxLength: 64 })), (bytes) => {
        const { file, problems } = decodeSmf(bytes);
        expect(file === null).toBe(problems.some((problem) => problem.severity === 'error'));
        for (const { offset } of problems) expect(offset ?? Number.NaN).toBeLessThanOrEqual(bytes.length);
        expect(readMidi(bytes).problems.length).toBeGreaterThanOrEqual(problems.length);
      }),
      { numRuns: 500 },
    );
  });

  it('[EX9] reads back every file that it writes', () => {
    const note = fc.record({
      kind: fc.constantFrom('note-on' as const, 'note-off' as const),
      ticks: fc.nat(100_000).map(Ticks),
      channel: fc.integer({ min: 1, max: 16 }),
      key: fc.nat(127),
      velocity: fc.integer({ min: 1, max: 127 }),
    });
    const text = fc.record({
      kind: fc.constantFrom('text' as const, 'name' as const, 'marker' as const),
      ticks: fc.nat(100_000).map(Ticks),
      text: fc.string({ unit: 'grapheme' }),
    });
    const event: fc.Arbitrary<SmfEvent> = fc.oneof(note, text);
    const track = fc.array(event, { maxLength: 20 }).map((events) => ({
      events: events.sort((a, b) => a.ticks - b.ticks),
      endTicks: Ticks(100_001),
    }));
    fc.assert(
      fc.property(fc.array(track, { minLength: 1, maxLength: 3 }), (tracks) => {
        const file: Smf = { format: 1, ticksPerQuarter: 480, tracks };
        expect(decodeSmf(encodeSmf(file))).toEqual({ file, problems: [] });
      }),
    );
  });

  it('[EX10] writes text as UTF-8 and reads Latin-1 where it is not', () => {
    // standard: RFC 3629, section 7 examples: U+2262 is E2 89 A2, U+233B4 is F0 A3 8E B4
    expect(encodeUtf8('A\u2262')).toEqual([0x41, 0xe2, 0x89, 0xa2]);
    expect(encodeUtf8('\u{233B4}')).toEqual([0xf0, 0xa3, 0x8e, 0xb4]);
    // standard: Unicode, chapter 3.9: half a surrogate pair is replaced by U+FFFD
    expect(decodeUtf8(Uint8Array.from(encodeUtf8('\ud800')))).toBe('\ufffd');
    // standard: ISO 8859-1: E9 is é, which alone is no UTF-8
    expect(decodeUtf8(Uint8Array.of(0x63, 0xe9))).toBe('cé');
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(decodeUtf8(Uint8Array.from(encodeUtf8(text)))).toBe(text);
      }),
    );
  });
});
