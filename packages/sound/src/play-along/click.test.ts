import { LeadDb, meter, type Performance, Seconds, type Subdivision } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { addClicks, type ClickOptions, clicksIn } from './click.ts';

/** Bars of two seconds after a count-in of one, with nothing played. */
function bars(count: number): Performance {
  const after = Array.from({ length: count }, (_, i) => ({
    bar: i + 1,
    play: 'time' as const,
    patternBar: null,
    startSeconds: Seconds(2 * (i + 1)),
    durationSeconds: Seconds(2),
  }));
  const countIn = {
    bar: 0,
    play: 'count-in' as const,
    patternBar: null,
    startSeconds: Seconds(0),
    durationSeconds: Seconds(2),
  };
  return {
    strokes: [],
    bars: [countIn, ...after],
    countInSeconds: Seconds(2),
    durationSeconds: Seconds(2 * (count + 1)),
  };
}

const times = (options: ClickOptions, count = 1) =>
  addClicks(bars(count), options).strokes.map((s) => s.timeSeconds);

describe('clicks', () => {
  it('[SO90] fall on every beat, the first of a bar accented, and not in the count-in', () => {
    const { strokes } = addClicks(bars(1), { meter: meter('4/4') });
    // definition: four beats of a bar from 2 s to 4 s
    expect(strokes.map((s) => s.timeSeconds)).toEqual([2, 2.5, 3, 3.5]);
    expect(strokes.map((s) => s.mark)).toEqual(['X', 'x', 'x', 'x']);
    expect(strokes.every((s) => s.voice === 'click' && s.limb === null)).toBe(true);
  });

  it('[SO90] can be on chosen beats only, as 2 and 4', () => {
    expect(times({ meter: meter('4/4'), beats: [2, 4] })).toEqual([2.5, 3.5]);
    expect(times({ meter: meter('6/8') })).toEqual([2, 3]);
    expect(times({ meter: meter('2+2+3/8') }).map((t) => t.toFixed(4))).toEqual([
      '2.0000',
      '2.5714',
      '3.1429',
    ]);
  });

  it('[SO91] have an even, quieter subdivision under them where asked', () => {
    const { strokes } = addClicks(bars(1), {
      meter: meter('2/4'),
      beats: [1],
      subdivision: 3,
      levelDb: LeadDb(-2),
    });
    expect(strokes.map((s) => s.mark).join('')).toBe('Xggggg');
    expect(strokes.map((s) => s.levelDb)).toEqual([-2, -12, -12, -12, -12, -12]);
    // definition: six thirds of a beat in two seconds
    strokes.forEach((s, i) => {
      expect(s.timeSeconds).toBeCloseTo(2 + i / 3, 12);
    });
    expect(strokes[4]?.written).toEqual({ bar: 1, beat: 2, slot: 2 });
    expect(strokes[4]?.at).toEqual({ num: 1, den: 3 });
  });

  it('[SO5900] divide beats that are not of one length into parts that are', () => {
    const slots = (subdivision: Subdivision) =>
      addClicks(bars(1), { meter: meter('2+2+3/8'), subdivision }).strokes.map(({ written }) => written.beat);
    // source: common practice: 2+2+3/8 is felt in its eighths, seven of them or fourteen sixteenths
    expect(slots(2).join('')).toBe('1122333');
    expect(slots(4).join('')).toBe('11112222333333');
    expect(slots(1).join('')).toBe('123');
    // definition: half of nine parts is none, so each beat has three
    expect(slots(3).join('')).toBe('111222333');
  });

  it('[SO92] drop out for some bars and return', () => {
    const gap = { soundingBars: 2, silentBars: 1 };
    const found = times({ meter: meter('1/4'), gap }, 6);
    expect(found).toEqual([2, 4, 8, 10]);
    expect([1, 2, 3, 4].map((bar) => clicksIn(bar, { soundingBars: 0, silentBars: 4 }))).not.toContain(true);
  });

  it('[SO93] keep every stroke of the performance, in order of time', () => {
    const first = addClicks(bars(2), { meter: meter('4/4') });
    const both = addClicks(first, { meter: meter('4/4'), beats: [1], subdivision: 2 });
    expect(first.strokes.every((stroke) => both.strokes.includes(stroke))).toBe(true);
    const sorted = both.strokes.map((s) => s.timeSeconds);
    expect(sorted).toEqual([...sorted].sort((a, b) => a - b));
  });

  it('[SO94] refuse beats that a meter has not, and broken gaps', () => {
    expect(() => addClicks(bars(1), { meter: meter('3/4'), beats: [4] })).toThrow(
      'At beats: found 4, expected 1 to 3 in 3/4',
    );
    const gap = { soundingBars: 1.5, silentBars: 1 };
    expect(() => addClicks(bars(1), { meter: meter('3/4'), gap })).toThrow(
      'At gap: found 1.5 bars, expected a whole number from 0',
    );
  });

  it('[SO3500] leave bars alone of which the form says where it clicks', () => {
    const whole = bars(2);
    const said = whole.bars.map((bar) => (bar.bar === 1 ? { ...bar, click: [] } : bar));
    const { strokes } = addClicks({ ...whole, bars: said }, { meter: meter('4/4') });
    expect(strokes.map((s) => s.timeSeconds)).toEqual([4, 4.5, 5, 5.5]);
  });
});
