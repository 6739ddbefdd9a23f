/**
 * A pedal that sends MIDI, where the student has let the page listen to one.
 *
 * Source: MIDI 1.0: control change 64 is the sustain pedal, 67 the soft pedal; values from 64 are down.
 */
import { useEffect, useRef } from 'react';
import { remembered } from '../../shared/memory.ts';
import type { StageActions } from './use-stage-actions.ts';

/** Name that the choice is remembered under. */
export const MIDI_PEDAL = 'practice.midi-pedal';

const CONTROL_CHANGE = 0xb0;
const DOWN = 64;
const PEDALS: Readonly<Record<number, 'right' | 'left'>> = { 64: 'right', 67: 'left' };

/** The pedal that a message presses down, or null. */
export function pedalOf(message: ArrayLike<number>): 'right' | 'left' | null {
  const [status = 0, controller = 0, value = 0] = Array.from(message);
  if ((status & 0xf0) !== CONTROL_CHANGE || value < DOWN) return null;
  return PEDALS[controller] ?? null;
}

/** Listens to every MIDI input. @returns how to stop. */
async function listenTo(press: (pedal: 'right' | 'left') => void): Promise<() => void> {
  const access = await navigator.requestMIDIAccess();
  const hear = (event: MIDIMessageEvent) => {
    const pedal = event.data && pedalOf(event.data);
    if (pedal) press(pedal);
  };
  const inputs = [...access.inputs.values()];
  for (const input of inputs) input.addEventListener('midimessage', hear);
  return () => {
    for (const input of inputs) input.removeEventListener('midimessage', hear);
  };
}

/** Lets a MIDI pedal act while something is on the stand. */
export function useMidiPedal(actions: StageActions): void {
  const latest = useRef(actions);
  latest.current = actions;
  useEffect(() => {
    if (remembered(MIDI_PEDAL) !== 'on' || !('requestMIDIAccess' in navigator)) return;
    const listening = listenTo((pedal) => latest.current[pedal]()).catch(() => () => undefined);
    return () => {
      void listening.then((stop) => stop());
    };
  }, []);
}
