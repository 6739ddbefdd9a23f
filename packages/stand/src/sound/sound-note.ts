/** What is said beside Play: how far starting is, what was lacking, and whether it sounds by a simpler way. */
import { useSyncExternalStore } from 'react';
import type { Player } from './player.ts';

/** What is said about starting. */
export interface SoundStartWords {
  readonly loading: string;
  /** The best way brought no sound in time; another is tried. */
  readonly slow: string;
  /** It sounds without the room, with a small kit, through plain buffers. */
  readonly simpler: Readonly<Record<'room' | 'kit' | 'plain', string>>;
  readonly failed: {
    /** The device gave no output. */
    readonly output: string;
    /** No way brought a sound. */
    readonly others: string;
  };
  /** The device took the sound away. */
  readonly held: string;
}

/** Which sentence tells of a way. */
const SIMPLER = { 'no room': 'room', 'small kit': 'kit', 'no thread': 'plain' } as const;

/** The part of a player that a note tells of. */
export type NotedPlayer = Pick<Player, 'status' | 'way' | 'lack'>;

/** The sentence; null where there is nothing to say. */
export function soundNote(player: NotedPlayer, words: SoundStartWords): string | null {
  const status = player.status();
  const way = player.way();
  switch (status) {
    case 'silent':
      return null;
    case 'loading':
      return player.lack() === null ? words.loading : words.slow;
    case 'failed':
      return player.lack() === 'output' ? words.failed.output : words.failed.others;
    case 'held':
      return words.held;
    case 'playing':
      return way === 'whole' ? null : words.simpler[SIMPLER[way]];
    default:
      return status satisfies never;
  }
}

/** The sentence of a player, kept up to date. */
export function useSoundNote(player: Player, words: SoundStartWords): string | null {
  return useSyncExternalStore(player.subscribe, () => soundNote(player, words));
}
