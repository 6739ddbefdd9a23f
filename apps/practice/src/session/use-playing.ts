/** Playing what is chosen: starting, stopping, passing changes on, and telling what happens. */
import type { Lesson } from '@shedbook/core';
import type { Program } from '@shedbook/playing';
import { type LiveSettings, type Player, type PlayerStatus, usePreparation } from '@shedbook/stand';
import { useEffect, useRef, useState } from 'react';
import type { PracticeChoice } from './choice.ts';
import { type PracticeEvent, type PracticeListener, watchBars } from './events.ts';
import { useBuildUp } from './use-build-up.ts';

/** When a change takes hold. */
export type When = 'now' | 'next time';

interface PlayingProps {
  readonly player: Player;
  readonly status: PlayerStatus;
  readonly program: Program | null;
  readonly settings: LiveSettings;
  readonly lesson: Lesson;
  readonly choice: PracticeChoice;
  /** What of the exercise is played, or null for all of it. */
  readonly part: string | null;
  readonly change: (next: Partial<PracticeChoice>, when: When) => void;
}

/** What playing offers. */
export interface Playing {
  readonly play: () => void;
  /** Plays what is on the stand once everything that was chosen with it has come. */
  readonly playSoon: () => void;
  readonly stop: () => void;
  readonly toggle: () => void;
  readonly listen: (listener: PracticeListener) => () => void;
  readonly tell: (event: PracticeEvent) => void;
  /** The change that comes next takes hold now, or with the next time round. */
  readonly changeWith: (when: When) => void;
}

/** Milliseconds after something was put on the stand until its kit is made. */
const QUIET_MS = 1200;

/** What begins anew, with a count-in, when it changes while it plays. */
function identityOf(program: Program | null, { choice, part }: PlayingProps): string {
  return program ? `${program.exercise} ${choice.form} ${part}` : '';
}

function useTelling() {
  const listeners = useRef(new Set<PracticeListener>());
  const tell = (event: PracticeEvent) => {
    for (const listener of [...listeners.current]) listener(event);
  };
  const listen = (listener: PracticeListener) => {
    listeners.current.add(listener);
    return () => {
      listeners.current.delete(listener);
    };
  };
  return useRef({ tell, listen }).current;
}

/** Plays. */
export function usePlaying(props: PlayingProps): Playing {
  const { player, status, program, settings, choice } = props;
  const latest = useRef(props);
  latest.current = props;
  const when = useRef<When>('now');
  const started = useRef('');
  const { tell, listen } = useTelling();
  const stop = () => player.stop();
  const play = () => {
    const now = latest.current;
    if (!now.program) return;
    const isSame = started.current === identityOf(now.program, now);
    started.current = identityOf(now.program, now);
    // What the device took away goes on from the bar where it stopped.
    const from = isSame ? (player.held() ?? undefined) : undefined;
    void player.play(now.program, now.settings, now.lesson.setUp, from);
  };
  const sounding = status === 'playing' || status === 'loading';
  const [wanted, want] = useState(0);
  useEffect(() => {
    if (wanted > 0) play();
  }, [wanted]);
  useEffect(() => {
    const hold = when.current;
    when.current = 'now';
    if (['silent', 'failed', 'held'].includes(player.status())) return;
    if (!program) return player.stop();
    if (started.current !== identityOf(program, latest.current)) return play();
    player.change(settings, hold);
    player.replace(program, hold);
  }, [player, program, settings]);
  useEffect(() => {
    if (status !== 'playing' || !latest.current.program) return;
    tell({ kind: 'started', program: latest.current.program });
    const unwatch = watchBars(player, tell);
    return () => {
      unwatch();
      tell({ kind: 'stopped' });
    };
  }, [player, status, tell]);
  useEffect(() => () => player.stop(), [player]);
  usePreparation(player, program, QUIET_MS);
  useBuildUp({ listen, lesson: props.lesson, choice, change: props.change });
  const changeWith = (next: When) => {
    when.current = next;
  };
  const playSoon = () => {
    // A context that is woken here may sound later without another press.
    void player.context().resume();
    want((before) => before + 1);
  };
  return { play, playSoon, stop, toggle: sounding ? stop : play, listen, tell, changeWith };
}
