/** Foot switches over MIDI while a room is open. */
import { useEffect, useState } from 'react';
import { remember, remembered } from '../device/memory.ts';
import { type OpenMidi, openWebMidi } from './midi-port.ts';
import { type PedalAction, readSigns } from './pedal.ts';
import { PedalBoard } from './pedal-board.ts';

const KEY = 'pedal';

const MEMORY = {
  read: () => readSigns(remembered(KEY)),
  write: (signs: object) => remember(KEY, JSON.stringify(signs)),
};

/** The switches while the room is open; switches that were learned before are heard at once. */
export function usePedal(actions: Readonly<Record<PedalAction, () => void>>, open: OpenMidi = openWebMidi) {
  const [board] = useState(() => new PedalBoard(open, MEMORY));
  board.onAction = (action) => actions[action]();
  useEffect(() => {
    if (Object.keys(board.state().signs).length > 0) void board.connect();
    return () => board.close();
  }, [board]);
  return board;
}
