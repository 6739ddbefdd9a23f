/** How a round is heard beside its model: which of the two, how fast, and whether that can be. */
import { type RoundReplay, SIDES, type Side, SPEEDS } from '../takes/index.ts';
import { Choices } from './choices.tsx';
import { Range } from './range.tsx';

/** What is said of it. */
export interface RoundHearingWords {
  readonly side: string;
  readonly sides: Readonly<Record<Side, string>>;
  readonly speed: string;
  readonly percent: (values: { readonly n: number }) => string;
  readonly preparing: string;
  readonly broken: string;
}

interface RoundHearingProps {
  readonly words: RoundHearingWords;
  readonly replay: Pick<RoundReplay, 'state' | 'side' | 'hear'>;
  /** How fast, in percent of what was played. */
  readonly percent: number;
  readonly onPercent: (percent: number) => void;
}

/** Choices of a round that is heard beside its model. */
export function RoundHearing({ words, replay, percent, onPercent }: RoundHearingProps) {
  return (
    <>
      <Choices
        label={words.side}
        value={replay.side}
        choices={SIDES.map((each) => [each, words.sides[each]] as const)}
        onChange={replay.hear}
      />
      <Range
        label={words.speed}
        says={words.percent({ n: percent })}
        value={percent}
        min={SPEEDS.least}
        max={SPEEDS.most}
        step={SPEEDS.step}
        onChange={onPercent}
      />
      <span role="status">
        {replay.state === 'preparing' && words.preparing}
        {replay.state === 'broken' && words.broken}
      </span>
    </>
  );
}
