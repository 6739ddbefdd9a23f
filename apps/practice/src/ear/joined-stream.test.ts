import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { JoinedStream } from './joined-stream.ts';

const RATE = 44_100;

function block(frame: number, ...samples: readonly number[]) {
  return { frame, samples: Float32Array.from(samples) };
}

function joined(pieces: readonly Float32Array[]): readonly number[] {
  return pieces.flatMap((piece) => [...piece]);
}

describe('one stream of blocks', () => {
  it('[ST76] fills holes with silence', () => {
    const stream = new JoinedStream(100, RATE);
    // definition: frames 100 and 101 were never taken, 104 neither
    expect(joined(stream.take(block(102, 1, 2)))).toEqual([0, 0, 1, 2]);
    expect(joined(stream.take(block(105, 3)))).toEqual([0, 3]);
    expect(stream.frame).toBe(106);
  });

  it('[ST76] takes what came twice, or before the start, once or not at all', () => {
    const stream = new JoinedStream(100, RATE);
    expect(stream.take(block(90, 1, 2, 3))).toEqual([]);
    expect(joined(stream.take(block(99, 1, 2, 3)))).toEqual([2, 3]);
    expect(joined(stream.take(block(101, 3, 4)))).toEqual([4]);
  });

  it('[ST76] gives as many samples as frames have passed, whatever comes', () => {
    const blocks = fc.array(fc.tuple(fc.integer({ min: -50, max: 400 }), fc.integer({ min: 1, max: 60 })));
    fc.assert(
      fc.property(blocks, (moves) => {
        const stream = new JoinedStream(0, RATE);
        let frame = 0;
        let length = 0;
        for (const [move, size] of moves) {
          frame = Math.max(0, frame + move);
          length += joined(stream.take({ frame, samples: new Float32Array(size) })).length;
          expect(length).toBe(stream.frame);
        }
      }),
      { numRuns: 200, seed: 76 },
    );
  });
});
