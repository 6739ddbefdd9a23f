/** Two buttons that put one of several earlier or later. */
import { Button, Icon } from '@shedbook/stand';
import { useLayoutEffect, useRef } from 'react';
import { useWords } from '../words/words.tsx';

/** What the two buttons are called. */
type TurnWords = Readonly<Record<'earlier' | 'later', (values: { readonly name: string }) => string>>;

/** What is put elsewhere, and where it is. */
export interface TurnButtonsProps {
  /** What is put elsewhere. */
  readonly name: string;
  /** Its place, from 0. */
  readonly at: number;
  /** How many there are. */
  readonly of: number;
  readonly onTurn: (by: -1 | 1) => void;
  /** What the buttons are called; left out, as where a groove is built up. */
  readonly words?: TurnWords;
}

/**
 * Keeps the focus on the button that was pressed, or on the other one where it goes no further, once the thing is at
 * its new place: before anything else can be pressed, so that the same key moves it on.
 */
function useFollow(at: number) {
  const pressed = useRef<-1 | 1 | null>(null);
  const earlier = useRef<HTMLButtonElement>(null);
  const later = useRef<HTMLButtonElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the place is what is waited for
  useLayoutEffect(() => {
    if (pressed.current === null) return;
    const buttons = [earlier.current, later.current];
    if (pressed.current === 1) buttons.reverse();
    pressed.current = null;
    const isElsewhere =
      document.activeElement !== document.body && !buttons.some((each) => each?.matches(':focus'));
    if (!isElsewhere) buttons.find((each) => each?.disabled === false)?.focus();
  }, [at]);
  return { earlier, later, pressed };
}

/** The buttons; none where there is one thing only. */
export function TurnButtons({ name, at, of, onTurn, words }: TurnButtonsProps) {
  const all = useWords().groove;
  const { earlier, later, pressed } = useFollow(at);
  if (of < 2) return null;
  const says = words ?? all;
  const turn = (by: -1 | 1) => {
    pressed.current = by;
    onTurn(by);
  };
  return (
    <>
      <Button
        ref={earlier}
        dress="bare"
        disabled={at === 0}
        aria-label={says.earlier({ name })}
        onClick={() => turn(-1)}
      >
        <Icon name="up" />
      </Button>
      <Button
        ref={later}
        dress="bare"
        disabled={at === of - 1}
        aria-label={says.later({ name })}
        onClick={() => turn(1)}
      >
        <Icon name="down" />
      </Button>
    </>
  );
}
