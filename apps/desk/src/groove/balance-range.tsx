/** A level beside the lead voice: a line to slide on, in decibels and in words. */

import { Range } from '@shedbook/stand';
import { useLive } from '../shared/use-live.ts';
import { useWords } from '../words/words.tsx';
import { balanceWord } from './balance-words.ts';

interface BalanceRangeProps {
  readonly label: string;
  /** The level that is kept, in dB relative to the lead voice. */
  readonly kept: number;
  readonly onKeep: (levelDb: number) => void;
}

/** Softest and loudest level that the balance offers, in dB relative to the lead voice. */
const BALANCE_DB = { least: -30, most: 6 } as const;

/** The line. */
export function BalanceRange({ label, kept, onKeep }: BalanceRangeProps) {
  const words = useWords().groove;
  const [level, setLive] = useLive<number>(kept);
  return (
    <Range
      isNarrow
      label={label}
      says={`${words.db({ db: level })}, ${words.words[balanceWord(level)]}`}
      value={level}
      min={BALANCE_DB.least}
      max={BALANCE_DB.most}
      step={1}
      onChange={setLive}
      onChangeEnd={(db) => db !== kept && onKeep(db)}
    />
  );
}
