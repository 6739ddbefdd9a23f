import { Bpm, type FullReport, seededRandom, type Voice } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { formOf, funk, loopReport } from '../../../../internal/testing/loops.ts';
import { judge } from '../judge.ts';
import { loopTask } from '../loop/task.ts';

const asked = { lesson: funk.lesson, exercise: 2, form: formOf(funk.lesson), bpm: Bpm(76) };
const task = loopTask(funk.lesson, asked);

/** A take of which some voices scatter evenly to both sides, and the others by what an ear is off. */
function take(seed: string, spreadMs: (voice: Voice) => number): FullReport {
  const random = seededRandom(seed);
  return loopReport(task, ({ voice }) => ({ offsetMs: (2 * random.next() - 1) * spreadMs(voice) }), {
    kind: 'audio',
  });
}

const verdictOf = (report: FullReport) => judge(asked, { report }, 'intermediate').verdict;
const SEEDS = Array.from({ length: 12 }, (_, index) => `take ${index}`);
/** What the ear is off where a stroke stands alone, measured on rendered takes. */
const EAR_MS = 0.4;

describe('a loudspeaker that nobody told of', () => {
  it.each(SEEDS)(
    '[JU6300] a hat on one grid beside human feet and a human snare is not praised: %s',
    (seed) => {
      const verdict = verdictOf(take(seed, (voice) => (voice === 'hihat' ? EAR_MS : 11)));
      expect(verdict.is).toBe('not judged');
      expect(verdict.about).toContainEqual({ what: 'only-loudspeaker', voice: 'hihat' });
    },
  );

  // source: trained people's strokes scatter by 2 % of the interval, at sixteenths of 76 by 4 ms
  it.each(SEEDS)('[JU6300] no hand is doubted, nor a recording of a machine: %s', (seed) => {
    expect(verdictOf(take(seed, (voice) => (voice === 'hihat' ? 7 : 11)))).toMatchObject({ is: 'clean' });
    expect(verdictOf(take(seed, () => EAR_MS))).toMatchObject({ is: 'clean' });
  });

  it('[JU7103] a snare that the ear could not tell from it is doubted and not missing, and the rest is judged', () => {
    const random = seededRandom('without snare');
    const rest = loopReport(
      task,
      ({ voice }) => (voice === 'snare' ? null : { offsetMs: 16 * (random.next() - 0.5) }),
      { kind: 'audio' },
    );
    const own = task.strokes.filter(({ voice }) => voice === 'snare');
    const { about } = verdictOf({
      ...rest,
      missed: [],
      unheard: [{ reason: 'from-loudspeaker', voice: 'snare', count: own.length }],
      unknown: own.map(({ written }) => ({ ...written, voice: 'snare' as const })),
    });
    expect(about).toEqual([{ what: 'only-loudspeaker', voice: 'snare' }]);
  });
});
