import { describe, expect, it } from 'vitest';
import { read } from '../../test/reading.ts';
import { feelSaid } from './feel-said.ts';

function saidOf(text: string) {
  return feelSaid(read(`title: A bar\n${text}`))?.kind ?? null;
}

const TWOS = 'groove: {hihat: xx xx xx xx, bass: x . x .}\nexercises: [. x . .x]';

describe('what is said of a feel', () => {
  // common practice: "straight" tells how eighths are played; triplets that are written out are played as they stand
  it('[LE4900] says nothing of beats that are written in threes', () => {
    expect(saidOf('vocabulary: [..., ..x, x.., x.x]\nexercises: [x.. ..x x.x ...]')).toBeNull();
  });

  it('[LE4900] says straight of eighths and sixteenths, also beside triplets', () => {
    expect(saidOf(TWOS)).toBe('even');
    expect(saidOf('groove: {hihat: xxxx xxxx xxxx xxxx}\nexercises: [. x . x]')).toBe('even');
    expect(saidOf('exercises: [x.. ..x .x x.x]')).toBe('even');
  });

  it('[LE4900] says how eighths swing, also beside triplets that are written out', () => {
    expect(saidOf(`feel: triplet\n${TWOS}`)).toBe('ratio');
    expect(saidOf('feel: by tempo\nexercises: [x.. ..x x.x ...]')).toBe('by tempo');
  });

  it('[LE4900] says nothing where the meter is in three by itself', () => {
    expect(saidOf('meter: 12/8\nexercises: [x.. ..x x.x ...]')).toBeNull();
    expect(saidOf('meter: 12/8\nfeel: triplet\nexercises: [x.. ..x x.x ...]')).toBeNull();
  });
});
