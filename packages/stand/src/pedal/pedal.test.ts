import { describe, expect, it, vi } from 'vitest';
import { askForMidi, type MidiPort, NoMidiError } from './midi-port.ts';
import { createPedalReader, learnSign, meaningOf, type PedalSigns, readSigns } from './pedal.ts';
import { PedalBoard } from './pedal-board.ts';

const SUSTAIN = { kind: 'control', channel: 1, number: 64 } as const;
const PAD = { kind: 'note', channel: 10, number: 36 } as const;

/** A port that a test plays on. */
function fakePort() {
  const listeners = new Set<(message: Uint8Array) => void>();
  const port: MidiPort = {
    names: () => ['Two-button switch'],
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onChange: () => () => undefined,
  };
  const send = (...bytes: readonly number[]) => {
    for (const listener of listeners) listener(Uint8Array.from(bytes));
  };
  return { port, send, listeners };
}

function boardOn(open: () => Promise<MidiPort>, first: PedalSigns = {}) {
  const kept: PedalSigns[] = [first];
  const board = new PedalBoard(open, {
    read: () => kept.at(-1) ?? {},
    write: (signs) => kept.push(signs),
  });
  const pressed: string[] = [];
  board.onAction = (action) => pressed.push(action);
  return { board, kept, pressed };
}

describe('a foot switch', () => {
  it('[ST100] is read once each time it goes down', () => {
    const read = createPedalReader();
    const told = (...bytes: readonly number[]) => read(Uint8Array.from(bytes));
    // standard: MIDI 1.0: B0 40 vv is controller 64 on the first channel, off below 64
    expect(told(0xb0, 64, 127)).toEqual(SUSTAIN);
    expect(told(0xb0, 64, 127)).toBeNull();
    expect(told(0xb0, 64, 63)).toBeNull();
    expect(told(0xb0, 64, 64)).toEqual(SUSTAIN);
    // standard: MIDI 1.0: 99 kk vv is note on in the tenth channel; velocity 0 is a release
    expect(told(0x99, 36, 90)).toEqual(PAD);
    expect(told(0x99, 36, 0)).toBeNull();
    expect(told(0x89, 36, 0)).toBeNull();
    // standard: MIDI 1.0: F8 is the clock
    expect(told(0xf8)).toBeNull();
  });

  it('[ST100] means one thing at a time', () => {
    const signs = learnSign(learnSign({}, 'next', SUSTAIN), 'toggle', PAD);
    expect([meaningOf(signs, SUSTAIN), meaningOf(signs, PAD)]).toEqual(['next', 'toggle']);
    const again = learnSign(signs, 'previous', SUSTAIN);
    expect(meaningOf(again, SUSTAIN)).toBe('previous');
    expect(again.next).toBeUndefined();
    expect(readSigns(JSON.stringify(again))).toEqual(again);
    expect([readSigns(null), readSigns('{'), readSigns('{"next":{"kind":"pitch"}}')]).toEqual([{}, {}, {}]);
  });

  it('[ST100] is learned by one press, which does nothing else, and is remembered', async () => {
    const { port, send } = fakePort();
    const { board, kept, pressed } = boardOn(async () => port);
    await board.connect();
    expect(board.state()).toMatchObject({ status: 'on', devices: ['Two-button switch'] });
    board.learn('next');
    send(0xb0, 64, 127);
    expect([board.state().learning, kept.at(-1)?.next, pressed]).toEqual([null, SUSTAIN, []]);
    send(0xb0, 64, 0);
    send(0xb0, 64, 127);
    send(0x90, 60, 100);
    expect(pressed).toEqual(['next']);
    board.forget('next');
    send(0xb0, 64, 0);
    send(0xb0, 64, 127);
    expect([pressed, kept.at(-1)]).toEqual([['next'], {}]);
  });

  it('[ST100] is not heard any more when the room is left', async () => {
    const { port, send, listeners } = fakePort();
    const { board, pressed } = boardOn(async () => port, { toggle: PAD });
    await board.connect();
    send(0x99, 36, 90);
    board.close();
    send(0x99, 36, 90);
    expect([pressed, listeners.size]).toEqual([['toggle'], 0]);
    const asked = board.connect();
    board.close();
    await asked;
    expect([board.state().status, listeners.size]).toEqual(['off', 0]);
  });

  it('[ST100] is not needed: a browser without MIDI, or one that may not, is said to be so', async () => {
    const without = boardOn(() => Promise.reject(new NoMidiError()));
    await without.board.connect();
    expect(without.board.state().status).toBe('missing');
    const refused = boardOn(() => Promise.reject(new DOMException('no', 'NotAllowedError')));
    await refused.board.connect();
    expect(refused.board.state().status).toBe('refused');
  });
});

it('[ST2701] ends a question for MIDI that nobody answers', async () => {
  vi.useFakeTimers();
  // by trying: Firefox leaves it open where its question was put away
  vi.stubGlobal('navigator', { requestMIDIAccess: () => new Promise(() => undefined) });
  try {
    const asked = expect(askForMidi()).rejects.toThrow('ms');
    await vi.advanceTimersByTimeAsync(20_000);
    await asked;
    vi.stubGlobal('navigator', {});
    await expect(askForMidi()).rejects.toThrow(NoMidiError);
  } finally {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  }
});
