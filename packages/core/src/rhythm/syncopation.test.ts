import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatFraction, fraction } from './fraction.ts';
import { rotate } from './necklace.ts';
import {
  intervalsOf,
  keithSyncopation,
  longuetHigginsLee,
  noteToBeatDistance,
  offBeatness,
} from './syncopation.ts';
import { bestPulseScore, counterEvidence, heardAccents } from './syncopation-pulse.ts';

const bitsOf = (text: string) => [...text].map((c) => (c === 'x' || c === '1' ? 1 : 0));
const fromOnsets = (length: number, onsets: readonly number[]) =>
  Array.from({ length }, (_, i) => (onsets.includes(i) ? 1 : 0));

// published: Gómez, Melvin, Rappaport, Toussaint 2005, Figs. 8 and 11 (WNBD, off-beatness); Toussaint 2013,
// Fig. 17.13 (Keith). library: SynPy3 487713e7 run with Lmax 5, no bar before (LHL)
const TIMELINES_16 = [
  { name: 'shiko', onsets: [0, 4, 6, 10, 12], keith: 1, offBeat: 0, wnbd: '6/5', lhl: 2 },
  { name: 'son', onsets: [0, 3, 6, 10, 12], keith: 2, offBeat: 1, wnbd: '14/5', lhl: 4 },
  { name: 'soukous', onsets: [0, 3, 6, 10, 11], keith: 3, offBeat: 2, wnbd: '18/5', lhl: 6 },
  { name: 'rumba', onsets: [0, 3, 7, 10, 12], keith: 2, offBeat: 2, wnbd: '18/5', lhl: 6 },
  { name: 'bossa-nova', onsets: [0, 3, 6, 10, 13], keith: 3, offBeat: 2, wnbd: '4', lhl: 6 },
  { name: 'gahu', onsets: [0, 3, 6, 10, 14], keith: 3, offBeat: 1, wnbd: '18/5', lhl: 5 },
];

// published: the same paper, Fig. 11: twelve-pulse bells of seven strokes, beats every three
const BELLS_12 = [
  { name: 'soli', text: 'x.x.x.x.xx.x', offBeat: 1, wnbd: '15/7' },
  { name: 'tambú', text: 'x.x.x.xx.x.x', offBeat: 2, wnbd: '15/7' },
  { name: 'bembé', text: 'x.x.xx.x.x.x', offBeat: 3, wnbd: '3' },
  { name: 'bembé-2', text: 'xx.x.xx.x.x.', offBeat: 2, wnbd: '15/7' },
  { name: 'yoruba', text: 'x.x.xx.x.xx.', offBeat: 2, wnbd: '3' },
  { name: 'tonada', text: 'x.xx.xx.x.x.', offBeat: 1, wnbd: '15/7' },
  { name: 'asaadua', text: 'x.x.x.xx.xx.', offBeat: 1, wnbd: '15/7' },
  { name: 'sorsonet', text: 'xxx.x.x.x.x.', offBeat: 1, wnbd: '3' },
  { name: 'bemba', text: 'x.xx.x.x.xx.', offBeat: 2, wnbd: '15/7' },
  { name: 'ashanti', text: 'x.xx.x.xx.x.', offBeat: 2, wnbd: '3' },
];

describe('published measures of syncopation', () => {
  it.each(TIMELINES_16)('[RH7] [RH8] off-beatness and Keith of $name', ({ onsets, keith, offBeat }) => {
    const bits = fromOnsets(16, onsets);
    expect(offBeatness(bits)).toBe(offBeat);
    expect(keithSyncopation(bits)).toBe(keith);
  });

  it.each(BELLS_12)('[RH7] [RH9] off-beatness and WNBD of the bell $name', ({ text, offBeat, wnbd }) => {
    expect(offBeatness(bitsOf(text))).toBe(offBeat);
    expect(formatFraction(noteToBeatDistance(bitsOf(text), 3).mean)).toBe(wnbd);
  });

  it('[RH7] has at most four off-beat places in twelve and eight in sixteen', () => {
    // published: Toussaint 2013: the numbers coprime with 12 and with 16
    expect(offBeatness(new Array(12).fill(1))).toBe(4);
    expect(offBeatness(new Array(16).fill(1))).toBe(8);
  });

  it.each(TIMELINES_16)('[RH9] WNBD of $name', ({ onsets, wnbd }) => {
    expect(formatFraction(noteToBeatDistance(fromOnsets(16, onsets), 4).mean)).toBe(wnbd);
  });

  it('[RH9] counts a note that ends on the second beat once or twice, as asked; only soukous differs', () => {
    const twice = TIMELINES_16.map(({ onsets }) =>
      formatFraction(noteToBeatDistance(fromOnsets(16, onsets), 4, 'twice').mean),
    );
    // published: the table above; library: SynPy WNBD.py counts the edge case twice, so soukous is 22/5
    expect(twice).toEqual(['6/5', '14/5', '22/5', '18/5', '4', '18/5']);
  });

  it('[RH9] of silence is zero', () => {
    // definition: no notes, no distance
    expect(noteToBeatDistance([0, 0, 0, 0], 2)).toEqual({ sum: fraction(0), mean: fraction(0) });
  });

  it.each(TIMELINES_16)('[RH10] Longuet-Higgins and Lee of $name', ({ onsets, lhl }) => {
    expect(longuetHigginsLee(fromOnsets(16, onsets), [2, 2, 2, 2])).toBe(lhl);
  });

  it('[RH10] follows the worked call of a library, and is −1 without syncopation', () => {
    // library: SynPy3 487713e7, LHL.py, example of get_syncopation_bitstring in 2/4
    expect(longuetHigginsLee(bitsOf('10010110'), [2, 2, 2])).toBe(2);
    // definition: strokes on every beat leave no rest after a weaker note
    expect(longuetHigginsLee(bitsOf('1000100010001000'), [2, 2, 2, 2])).toBe(-1);
  });

  it('[RH10] hears the bar before when it loops', () => {
    // definition: a last off-beat (level 3, weight −3) before a silent "1" (weight 0) is a pair of strength 3
    const bits = bitsOf('00000001');
    expect(longuetHigginsLee(bits, [2, 2, 2])).toBe(-1);
    expect(longuetHigginsLee(bits, [2, 2, 2], 'same bar')).toBe(3 + 2 + 1);
  });

  it('[RH11] intervals round the cycle add up to it', () => {
    // published: Gómez and others 2005, interval word of the son clave
    expect(intervalsOf(fromOnsets(16, [0, 3, 6, 10, 12]))).toEqual([3, 3, 4, 2, 4]);
    const bits = fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 1, maxLength: 24 });
    fc.assert(
      fc.property(bits, (values) => {
        const sum = intervalsOf(values).reduce((total, each) => total + each, 0);
        expect(sum).toBe(values.includes(1) ? values.length : 0);
      }),
    );
  });
});

describe('evidence against a pulse', () => {
  it('[RH12] hears accents as Povel and Okkerman found them', () => {
    const accents = heardAccents(bitsOf('1101011101000')).map((accent) => (accent ? 1 : 0));
    // published: Essens 1995, Table 1 (p. 520), his example 110101110100: accents 010101010100; one silent place is
    // added here, since ours is looped
    expect(accents.slice(0, 12).join('')).toBe('010101010100');
  });

  it('[RH13] is four for a silent pulse and one for an unaccented one', () => {
    const bits = bitsOf('1100000010000000');
    // definition: pulses on places 0, 4, 8, 12: the first of two (unaccented), silence, a lone stroke, silence
    expect(counterEvidence(bits, 4)).toEqual({ silent: 2, unaccented: 1, score: 9 });
  });

  it('[RH13] finds the pulse with the least evidence against it', () => {
    // definition: strokes three places after each fourth: the pulse from place 3 has nothing against it
    const bits = rotate(bitsOf('1000100010001000'), 1);
    expect(counterEvidence(bits, 4).score).toBe(16);
    expect(counterEvidence(bits, 4, 3).score).toBe(0);
    expect(bestPulseScore(bits)).toBe(0);
  });
});
