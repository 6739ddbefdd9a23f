/** Listening to a take beside its model, both in step. */

import { Button, Choices } from '@shedbook/stand';
import { SIDES } from '@shedbook/stand/takes';
import { useHearingWords } from '../page/hearing-words.ts';
import type { Take } from './take.ts';
import styles from './take-listener.module.css';
import { useComparison } from './use-comparison.ts';

interface ListenerProps {
  readonly take: Take;
  readonly audioOf: () => Promise<Blob | null>;
}

/** Play, stop, and what is heard. */
export function TakeListener({ take, audioOf }: ListenerProps) {
  const words = useHearingWords().takes;
  const { state, side, hear, play, stop, hasModel } = useComparison(take, audioOf);
  const isPlaying = state === 'playing';
  return (
    <div className={styles.listener} data-part="listener" data-state={state}>
      <Button disabled={state === 'preparing'} onClick={isPlaying ? stop : play}>
        {isPlaying ? words.stop : words.listen}
      </Button>
      {hasModel ? (
        <Choices
          label={words.side}
          value={side}
          choices={SIDES.map((each) => [each, words.sides[each]] as const)}
          onChange={hear}
        />
      ) : (
        <p className="quiet">{words.other}</p>
      )}
      <span role="status">
        {state === 'preparing' && words.preparing}
        {state === 'broken' && words.broken}
      </span>
    </div>
  );
}
