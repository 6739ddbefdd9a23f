/** Two buttons that put one of several earlier or later. */
import { Button, Icon } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';

/** What is put elsewhere, and where it is. */
export interface TurnButtonsProps {
  /** What is put elsewhere. */
  readonly name: string;
  /** Its place, from 0. */
  readonly at: number;
  /** How many there are. */
  readonly of: number;
  readonly onTurn: (by: -1 | 1) => void;
}

/** The buttons; none where there is one thing only. */
export function TurnButtons({ name, at, of, onTurn }: TurnButtonsProps) {
  const words = useWords().groove;
  if (of < 2) return null;
  return (
    <>
      <Button
        dress="bare"
        disabled={at === 0}
        aria-label={words.earlier({ name })}
        onClick={() => onTurn(-1)}
      >
        <Icon name="up" />
      </Button>
      <Button
        dress="bare"
        disabled={at === of - 1}
        aria-label={words.later({ name })}
        onClick={() => onTurn(1)}
      >
        <Icon name="down" />
      </Button>
    </>
  );
}
