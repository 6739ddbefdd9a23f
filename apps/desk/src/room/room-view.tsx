/** The lesson room: one exercise at a time, so large that it can be read from the throne, without a hand. */

import { type Lesson, sectionOf } from '@shedbook/core';
import { Button, Icon, PedalSetUp, SheetButton, useAwake, usePedal } from '@shedbook/stand';
import { HowList } from '@shedbook/stand/how-list';
import { Prose } from '@shedbook/stand/prose';
import { useEffect, useRef, useState } from 'react';
import { BarLoops } from '../hear/bar-loop.tsx';
import { useSound } from '../hear/sound-context.tsx';
import { useBall } from '../hear/use-ball.ts';
import { GrooveDrawing } from '../notation/groove-drawing.tsx';
import { findMedium } from '../shared/find-medium.ts';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import { LoopChoice } from './loop-choice.tsx';
import { RoomDrawing } from './room-drawing.tsx';
import { RoomHead } from './room-head.tsx';
import styles from './room-view.module.css';
import { useNextAfter } from './use-next-after.ts';
import { useRoomKeys } from './use-room-keys.ts';

interface RoomViewProps {
  readonly id: string;
  readonly lesson: Lesson;
}

/** The view. */
export function RoomView({ id, lesson }: RoomViewProps) {
  const words = useWords();
  const sound = useSound();
  const room = useRef<HTMLDivElement>(null);
  const all = lesson.exercises.length;
  const at = Math.max(
    0,
    lesson.exercises.findIndex(({ number }) => number === sound.choice.exercise),
  );
  const exercise = lesson.exercises[at];
  const { choose } = sound;
  const turn = (by: number) => {
    const next = lesson.exercises[at + by];
    if (next) choose({ exercise: next.number });
  };
  useAwake();
  useBall(sound.player, lesson, room);
  const actions = { next: () => turn(1), previous: () => turn(-1), toggle: sound.toggle };
  useRoomKeys(actions);
  const pedal = usePedal(actions);
  const [loops, setLoops] = useNextAfter(sound, lesson);
  const [showsGroove, setShowsGroove] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, as the room opens, where the ledge had time alone
  useEffect(() => {
    if (exercise) choose({ exercise: exercise.number });
  }, []);
  if (!exercise) return <p className={styles.empty}>{words.page.empty}</p>;
  const section = sectionOf(lesson, exercise.number);
  const about = section.heading ?? lesson.title;
  return (
    <div className={styles.room} data-part="room" ref={room}>
      <h1 className="hidden-words">{lesson.title}</h1>
      <RoomHead
        {...{ exercise, section, all }}
        place={at + 1}
        onLeave={() => go({ at: 'lesson', id, view: 'page' })}
      />
      <RoomDrawing exercise={exercise} meter={section.meter} />
      {showsGroove && (
        <div className={styles.groove} data-part="room-groove">
          <GrooveDrawing lesson={section} />
        </div>
      )}
      <div className={styles.said}>
        <HowList section={section} exercise={exercise} words={words} />
        <p className={styles.notes}>{exercise.notes}</p>
        <Prose text={null} media={exercise.media} find={findMedium} />
      </div>
      <div className={styles.foot}>
        <div className={styles.turn}>
          <Button disabled={at === 0} onClick={() => turn(-1)}>
            <Icon name="back" />
            {words.room.previous}
          </Button>
          <Button dress="strong" disabled={at === all - 1} onClick={() => turn(1)}>
            {words.room.next}
            <Icon name="next" />
          </Button>
        </div>
        <Button aria-pressed={showsGroove} onClick={() => setShowsGroove(!showsGroove)}>
          {words.room.groove}
        </Button>
        <BarLoops exercise={exercise.number} bars={exercise.parts[0]?.pattern.bars.length ?? 0} />
        <LoopChoice loops={loops} onChange={setLoops} />
        {(section.text !== null || section.media) && (
          <SheetButton title={about} opens={about} done={words.heading.close}>
            <Prose text={section.text} media={section.media} find={findMedium} />
          </SheetButton>
        )}
        <SheetButton title={words.pedal.title} opens={words.pedal.title} done={words.heading.close}>
          <PedalSetUp board={pedal} words={words.pedal} />
        </SheetButton>
      </div>
    </div>
  );
}
