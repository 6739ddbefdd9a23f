import { CLI } from '@shedbook/words';
import { expect, it } from 'vitest';
import { loudspeakerHint } from './loudspeaker-hint.ts';

it('[CL6600] says what --playing is for where a loudspeaker was heard that nobody named', () => {
  const { words } = CLI.en;
  const of = (what: 'only-loudspeaker' | 'missing') => ({
    verdict: { level: 'beginner', is: 'not judged', about: [{ what, voice: 'snare' }] } as const,
  });
  expect(loudspeakerHint(of('only-loudspeaker'), undefined, words)).toEqual([
    expect.stringContaining('--playing'),
  ]);
  expect(loudspeakerHint(of('only-loudspeaker'), 'page.wav', words)).toEqual([]);
  expect(loudspeakerHint(of('missing'), undefined, words)).toEqual([]);
});
