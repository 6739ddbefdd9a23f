/** What the command line can do about a loudspeaker that it was not told of. */
import type { Judgement } from '@shedbook/judge';
import type { CliCatalogue } from '@shedbook/words';

/** The line that says what `--playing` is for: where a loudspeaker was heard and nobody named what it played. */
export function loudspeakerHint(
  { verdict }: Pick<Judgement, 'verdict'>,
  playing: string | undefined,
  words: CliCatalogue['words'],
): readonly string[] {
  const isHeard = verdict.about.some(({ what }) => what === 'only-loudspeaker');
  return isHeard && playing === undefined ? [words.loudspeakerUntold] : [];
}
