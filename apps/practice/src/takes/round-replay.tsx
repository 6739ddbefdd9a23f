/** A round in slow motion against its model, at any speed, with the page moving. */
import { countedTempo, inSetUp, sectionOf } from '@shedbook/core';
import { numberToday } from '@shedbook/judge';
import { Button, Select } from '@shedbook/stand';
import { RoundHearing } from '@shedbook/stand/round-hearing';
import { useMemo, useRef, useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { BarsView } from '../tiles/bars-view.tsx';
import { picturesOf } from '../tiles/pictures.ts';
import { useRidingBall } from '../tiles/use-riding-ball.ts';
import inRow from '../ui/row.module.css';
import styles from './round-replay.module.css';
import type { Take } from './take.ts';
import { useReplay } from './use-replay.ts';

interface ReplayProps {
  readonly take: Take;
  readonly number: number | null;
  readonly audioOf: () => Promise<Blob | null>;
}

/** The speed that is offered first, in percent of what was played. */
const FIRST_SPEED = 50;

function Replay({ take, number, audioOf }: ReplayProps) {
  const words = useHearingWords().takes;
  const { pack, choice } = usePracticeSession();
  const [round, setRound] = useState(0);
  const [percent, setPercent] = useState<number>(FIRST_SPEED);
  const slow = { round, speed: percent / 100 };
  const replay = useReplay({ take, number, slow }, audioOf);
  const { state, play, stop, clock, form } = replay;
  const page = useRef<HTMLDivElement>(null);
  const pictures = useMemo(
    () => picturesOf({ pack, exercise: number, choice: { ...choice, staff: 'full' }, form }),
    [pack, number, choice, form],
  );
  useRidingBall(clock, pictures, page);
  const { setUp } = choice;
  const lesson = useMemo(() => inSetUp(pack.lesson, setUp), [pack, setUp]);
  const on = lesson.exercises.find((each) => each.number === number) ?? null;
  return (
    <div className={styles.replay} data-part="replay" data-state={state}>
      <div ref={page}>
        {on && <BarsView bars={pictures.exercise} on="exercise" exercise={on} />}
        {pictures.groove.length > 0 && <BarsView bars={pictures.groove} on="groove" exercise={null} />}
      </div>
      <div className={inRow.row}>
        <Button dress="strong" disabled={state === 'preparing'} onClick={state === 'playing' ? stop : play}>
          {state === 'playing' ? words.stop : words.playSlow}
        </Button>
        <Select
          label={words.whichRound}
          value={round}
          onChange={(event) => setRound(Number(event.target.value))}
        >
          {take.loops.map((loop, index) => (
            <option key={loop.startSeconds} value={index}>
              {words.roundAt({
                n: index + 1,
                bpm: countedTempo(sectionOf(pack.lesson, number).meter, loop.bpm),
              })}
            </option>
          ))}
        </Select>
      </div>
      <RoundHearing words={words} replay={replay} percent={percent} onPercent={setPercent} />
    </div>
  );
}

/** The replay, folded until it is wanted; nothing where the exercise is gone from the sheet. */
export function RoundReplay({ take, audioOf }: Omit<ReplayProps, 'number'>) {
  const words = useHearingWords().takes;
  const { pack } = usePracticeSession();
  const [isOpen, setOpen] = useState(false);
  const number = numberToday(pack.lesson, take);
  if (number === undefined || take.loops.length === 0) return null;
  return (
    <details className={styles.fold} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.slow}</summary>
      {isOpen && <Replay take={take} number={number} audioOf={audioOf} />}
    </details>
  );
}
