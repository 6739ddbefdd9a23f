import { LeadDb, Lufs, Seconds } from '@shedbook/core';
import { dbToPower, powerToDb } from '@shedbook/signal';
import { describe, expect, it } from 'vitest';
import { kit, RATE, STROKE_OF, strokeLevelLufs } from '../../test/sounds.ts';
import { SOUND_NAMES } from '../kit/sound.ts';
import { measureLoudness } from '../loudness/measure.ts';
import { INSTRUMENTS, placing } from './picture.ts';
import { render } from './render.ts';
import { renderLoop } from './render-loop.ts';
import { createRenderer } from './renderer.ts';
import type { SoundingStroke } from './sound-of.ts';

const BEAT_SECONDS = 0.5;
const TEMPI_BPM = [80, 120, 180, 240];
/** Levels of a swing groove relative to the ride, chosen here. */
const BALANCE_DB = { ride: 0, snare: -4, 'hihat-foot': -6, sidestick: -5, bass: -14 } as const;
type Played = keyof typeof BALANCE_DB;

/** Bars of swing in four: ride, hi-hat foot on 2 and 4, feathered bass, comping on snare and side stick. */
function swing(bars: number, beatSeconds = BEAT_SECONDS): readonly SoundingStroke[] {
  const beats: readonly (readonly [Played, readonly number[]])[] = [
    ['ride', [0, 1, 1 + 2 / 3, 2, 3, 3 + 2 / 3]],
    ['hihat-foot', [1, 3]],
    ['bass', [0, 1, 2, 3]],
    ['snare', [2 / 3, 2]],
    ['sidestick', [3]],
  ];
  const strokes = Array.from({ length: bars }, (_, bar) =>
    beats.flatMap(([voice, at]) =>
      at.map((beat) => ({
        ...STROKE_OF[voice],
        timeSeconds: Seconds((4 * bar + beat) * beatSeconds),
        levelDb: LeadDb(BALANCE_DB[voice]),
      })),
    ),
  );
  return strokes.flat().sort((a, b) => a.timeSeconds - b.timeSeconds);
}

function energyMeanDb(levels: readonly number[]): number {
  return powerToDb(levels.reduce((sum, level) => sum + dbToPower(level), 0) / levels.length);
}

const TARGETS_LUFS = [-23, -18, -16];

describe('the mix', () => {
  it.each(TEMPI_BPM)('[SO50] keeps the balance of swing at %i within 1 dB, voice by voice', (bpm) => {
    const found = (voice: Played) => {
      const strokes = swing(4, 60 / bpm).filter((stroke) => stroke.voice === voice);
      const audio = render({ strokes, durationSeconds: Seconds(960 / bpm) }, { kit: kit(), tail: 'cut' });
      return energyMeanDb(strokes.map(({ timeSeconds }) => strokeLevelLufs(audio, timeSeconds)));
    };
    const lead = found('ride');
    for (const voice of Object.keys(BALANCE_DB) as Played[]) {
      expect(Math.abs(found(voice) - lead - BALANCE_DB[voice])).toBeLessThan(1);
    }
  });

  it.each(TARGETS_LUFS.map(Lufs))(
    '[SO51] of a swing groove meets %i LUFS within 0.5 LU under −1 dBTP',
    (loudnessLufs) => {
      const audio = render({ strokes: swing(4), durationSeconds: Seconds(8) }, { kit: kit(), loudnessLufs });
      const found = measureLoudness(audio);
      expect(Math.abs(found.integratedLufs - loudnessLufs)).toBeLessThan(0.5);
      expect(found.truePeakDbtp).toBeLessThanOrEqual(-1);
    },
  );

  it.each([
    { groove: 'six-eight', voices: { hihat: [0, 1, 2, 3, 4, 5], snare: [3], bass: [0] }, accents: [0, 3] },
    { groove: 'shuffle', voices: { hihat: [0, 2, 3, 5], snare: [3], bass: [0, 3] }, accents: [3] },
  ] as const)('[SO3300] of a $groove keeps its accents when its loudness is set', ({ voices, accents }) => {
    const isAccent = (at: number) => (accents as readonly number[]).includes(at);
    const strokes = [0, 1, 2, 3].flatMap((bar) =>
      Object.entries<readonly number[]>(voices).flatMap(([voice, places]) =>
        places.map((at) => ({
          ...STROKE_OF[voice as keyof typeof voices],
          timeSeconds: Seconds(0.3 * (6 * bar + at)),
          levelDb: LeadDb(isAccent(at) && voice !== 'bass' ? 6 : 0),
        })),
      ),
    );
    const performance = { strokes, durationSeconds: Seconds(7.2) };
    const struck = render(performance, { kit: kit() });
    const set = render(performance, { kit: kit(), loudnessLufs: Lufs(-16) });
    const times = [...new Set(strokes.map(({ timeSeconds }) => timeSeconds))];
    const gains = times.map((time) => strokeLevelLufs(set, time) - strokeLevelLufs(struck, time));
    // definition: one gain for the whole moves every stroke alike
    expect(Math.max(...gains) - Math.min(...gains)).toBeLessThan(1.6);
  });

  it('[SO52] of strokes is their sum: voices rendered alone add up to the whole', () => {
    const strokes = [
      { ...STROKE_OF.bass, timeSeconds: Seconds(0), levelDb: LeadDb(-3) },
      { ...STROKE_OF['click-beat'], timeSeconds: Seconds(0.1), levelDb: LeadDb(-3) },
    ];
    const dry = { kit: kit(), room: false, tail: 'cut' as const };
    const [bass, click] = strokes;
    const both = render({ strokes, durationSeconds: Seconds(0.3) }, dry);
    // The level of every sample is set by the stroke alone, the take by how many came before: so the first alone
    const first = render({ strokes: bass ? [bass] : [], durationSeconds: Seconds(0.3) }, dry);
    const before = Math.round((click?.timeSeconds ?? 0) * RATE);
    expect(both.left.subarray(0, before)).toEqual(first.left.subarray(0, before));
    expect(both.left.subarray(before)).not.toEqual(first.left.subarray(before));
  });
});

describe('a ringing cymbal', () => {
  const ride = (count: number, gap: number) =>
    Array.from({ length: count }, (_, i) => ({
      ...STROKE_OF.ride,
      timeSeconds: Seconds(i * gap),
      levelDb: LeadDb(0),
    }));
  const dry = { room: false, picture: false };

  it('[SO60] rings on under the next stroke', () => {
    const audio = render({ strokes: ride(2, 0.5), durationSeconds: Seconds(1) }, { kit: kit(), ...dry });
    const alone = render({ strokes: ride(1, 0.5), durationSeconds: Seconds(1) }, { kit: kit(), ...dry });
    const at = Math.round(0.5 * RATE);
    expect(audio.left.subarray(0, at)).toEqual(alone.left.subarray(0, at));
    expect(Math.abs(alone.left[at + 5] as number)).toBeGreaterThan(0);
  });

  it('[SO61] gathers wash: between repeated strokes more sounds than single strokes add up to', () => {
    const strokes = ride(8, 0.25);
    const whole = (played: readonly SoundingStroke[]) =>
      render({ strokes: played, durationSeconds: Seconds(2.1) }, { kit: kit(), ...dry, tail: 'cut' }).left;
    const added = new Float32Array(whole([]).length);
    for (const stroke of strokes)
      whole([stroke]).forEach((sample, i) => {
        added[i] = (added[i] as number) + sample;
      });
    const energyDb = (samples: Float32Array, from: number, to: number) => {
      const stretch = samples.subarray(Math.round(from * RATE), Math.round(to * RATE));
      return powerToDb(stretch.reduce((sum, sample) => sum + sample * sample, 0));
    };
    /** What sounds between two strokes against the blow itself, from the fourth stroke on. */
    const between = (samples: Float32Array) => {
      const each = [3, 4, 5, 6].map((k) => {
        const at = k * 0.25;
        return energyDb(samples, at + 0.15, at + 0.24) - energyDb(samples, at, at + 0.03);
      });
      return each.reduce((sum, db) => sum + db, 0) / each.length;
    };
    // published: Fletcher and Rossing, ch. 20: energy passes to higher modes as the plate moves more
    expect(between(whole(strokes)) - between(added)).toBeGreaterThan(1);
  });

  it('[SO62] falls silent when a hand chokes it', () => {
    const renderer = createRenderer({ kit: kit(), ...dry });
    renderer.schedule([{ ...STROKE_OF.crash, timeSeconds: Seconds(0), levelDb: LeadDb(0) }]);
    renderer.choke('crash', Seconds(0.5));
    const [left, right] = [new Float32Array(RATE), new Float32Array(RATE)];
    renderer.render(left, right, RATE);
    const energy = (from: number) =>
      left.subarray(from * RATE, (from + 0.05) * RATE).reduce((sum, sample) => sum + sample * sample, 0);
    expect(energy(0.45)).toBeGreaterThan(0);
    expect(powerToDb(energy(0.6) / energy(0.45))).toBeLessThan(-60);
  });

  const closers = ['hihat', 'hihat-foot'] as const;
  it.each(closers)('[SO63] open hi-hats are closed by %s', (closer) => {
    const open = { ...STROKE_OF['hihat-open'], timeSeconds: Seconds(0), levelDb: LeadDb(0) };
    const closing = { ...STROKE_OF[closer], timeSeconds: Seconds(0.4), levelDb: LeadDb(-90) };
    const audio = render({ strokes: [open, closing], durationSeconds: Seconds(1) }, { kit: kit(), ...dry });
    const energy = (from: number) =>
      audio.left
        .subarray(from * RATE, (from + 0.05) * RATE)
        .reduce((sum, sample) => sum + sample * sample, 0);
    expect(powerToDb(energy(0.5) / energy(0.35))).toBeLessThan(-60);
  });
});

describe('the picture', () => {
  it.each(INSTRUMENTS)(
    '[SO70] places %s with constant power, mirrored for a left-handed set',
    (instrument) => {
      const right = placing(instrument, 'right-handed', true);
      const left = placing(instrument, 'left-handed', true);
      expect(right.left ** 2 + right.right ** 2).toBeCloseTo(1, 12);
      expect(left.left).toBeCloseTo(right.right, 12);
      // definition: a sum to mono of amplitude gains l and r keeps (l + r)² / 2 of the power
      expect(powerToDb((right.left + right.right) ** 2 / 2)).toBeGreaterThan(-1);
    },
  );

  it('[SO70] has ride and low tom on the right, hi-hats on the left of a right-handed drummer', () => {
    const side = (name: (typeof INSTRUMENTS)[number]) => {
      const { left, right } = placing(name, 'right-handed', true);
      return Math.sign(right - left);
    };
    // common practice: the drummer's view of a right-handed set
    expect([side('ride'), side('tom-low'), side('hihat')]).toEqual([1, 1, -1]);
  });

  it('[SO71] and room can be off: then both channels are the same, and nothing sounds after the strokes', () => {
    const strokes = swing(1);
    const audio = render(
      { strokes, durationSeconds: Seconds(2) },
      { kit: kit(), room: false, picture: false },
    );
    expect(audio.left).toEqual(audio.right);
    const side = { ...STROKE_OF.sidestick, timeSeconds: Seconds(0), levelDb: LeadDb(0) };
    const late = (room: boolean) =>
      render(
        { strokes: [side], durationSeconds: Seconds(0.6) },
        { kit: kit(), room, tail: 'cut' },
      ).left.subarray(0.4 * RATE);
    expect(late(false).every((sample) => sample === 0)).toBe(true);
    expect(late(true).some((sample) => Math.abs(sample) > 1e-6)).toBe(true);
  });

  it.each(SOUND_NAMES)('[SO72] %s survives a sum to mono with picture and room on', (name) => {
    const strokes = [{ ...STROKE_OF[name], timeSeconds: Seconds(0), levelDb: LeadDb(0) }];
    const { left, right } = render({ strokes, durationSeconds: Seconds(0.5) }, { kit: kit(), tail: 'cut' });
    let [stereo, mono] = [0, 0];
    left.forEach((sample, i) => {
      stereo += sample ** 2 + (right[i] as number) ** 2;
      mono += (sample + (right[i] as number)) ** 2 / 2;
    });
    expect(powerToDb(mono / stereo)).toBeGreaterThan(-1.5);
  });
});

describe('a loop', () => {
  const performance = { strokes: swing(2), durationSeconds: Seconds(4) };
  const loop = renderLoop(performance, { kit: kit() });

  it('[SO80] is exactly as long as its bars', () => {
    expect(loop.left.length).toBe(4 * RATE);
  });

  it('[SO81] joins without a click: the seam is no rougher than the music', () => {
    const { left } = loop;
    const round = (i: number) => left[(i + left.length) % left.length] as number;
    // definition: the second difference is what a jump in value or slope would show in
    const rough = (i: number) => Math.abs(round(i + 1) - 2 * round(i) + round(i - 1));
    const before = Array.from({ length: 200 }, (_, k) => rough(left.length - 2 - 200 + k));
    const onset = Array.from({ length: 200 }, (_, k) => rough(2 * RATE - 2 + k));
    const seam = Math.max(rough(-1), rough(-2));
    expect(seam).toBeLessThanOrEqual(Math.max(...before));
    expect(Math.max(...Array.from({ length: 200 }, (_, k) => rough(k)))).toBeLessThan(3 * Math.max(...onset));
  });

  it('[SO82] carries what rings over its end into its start', () => {
    const once = render(performance, { kit: kit() });
    const folded = new Float64Array(loop.left.length);
    once.left.forEach((sample, i) => {
      folded[i % folded.length] = (folded[i % folded.length] as number) + sample;
    });
    const off = folded.map((sample, i) => Math.abs(sample - (loop.left[i] as number)));
    expect(off.reduce((most, each) => Math.max(most, each), 0)).toBeLessThan(1e-5);
    expect(once.left.length).toBeGreaterThan(loop.left.length + RATE);
  });

  it('[SO83] can begin after the count-in, and refuses to begin after its end', () => {
    const click = { ...STROKE_OF['click-accent'], timeSeconds: Seconds(0), levelDb: LeadDb(0) };
    const counted = {
      strokes: [click, ...swing(1).map((s) => ({ ...s, timeSeconds: Seconds(s.timeSeconds + 2) }))],
      durationSeconds: Seconds(4),
    };
    const played = renderLoop(counted, { kit: kit(), fromSeconds: Seconds(2) });
    expect(played.left).toEqual(
      renderLoop({ strokes: swing(1), durationSeconds: Seconds(2) }, { kit: kit() }).left,
    );
    expect(() => renderLoop(counted, { kit: kit(), fromSeconds: Seconds(4) })).toThrow(
      'At fromSeconds: found 4, expected less than the 4 s of the performance',
    );
  });
});
