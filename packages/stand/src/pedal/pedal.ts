/**
 * A foot switch over MIDI: what it sends, and what each of its presses means in the lesson room.
 *
 * Sources: MIDI 1.0 Detailed Specification: status 9n is note on (velocity 0 is a release), Bn is control change;
 * switches such as controller 64 (damper) are on from 64. Channels are told from 1, as on the devices.
 */

/** What a press can mean. */
export type PedalAction = 'next' | 'previous' | 'toggle';

/** Every meaning, in the order in which they are offered. */
export const PEDAL_ACTIONS: readonly PedalAction[] = ['next', 'previous', 'toggle'];

/** What tells one switch from another. */
export interface PedalSign {
  readonly kind: 'control' | 'note';
  /** From 1 to 16. */
  readonly channel: number;
  /** Controller or key, from 0 to 127. */
  readonly number: number;
}

/** Which switch means what. */
export type PedalSigns = Readonly<Partial<Record<PedalAction, PedalSign>>>;

const NOTE_ON = 0x9;
const CONTROL_CHANGE = 0xb;
const ON_FROM = 64;

function isSame(a: PedalSign | undefined, b: PedalSign): boolean {
  return a?.kind === b.kind && a.channel === b.channel && a.number === b.number;
}

/** Reads messages one after another: the sign of a switch at the moment that it goes down, else null. */
export function createPedalReader(): (message: Uint8Array) => PedalSign | null {
  const down = new Set<string>();
  return (message) => {
    const [status = 0, number = 0, value = 0] = message;
    const channel = (status & 0xf) + 1;
    if (status >> 4 === NOTE_ON) return value > 0 ? { kind: 'note', channel, number } : null;
    if (status >> 4 !== CONTROL_CHANGE) return null;
    const key = `${channel} ${number}`;
    const wasDown = down.has(key);
    if (value < ON_FROM) down.delete(key);
    else down.add(key);
    return value >= ON_FROM && !wasDown ? { kind: 'control', channel, number } : null;
  };
}

/** What a press means, or null. */
export function meaningOf(signs: PedalSigns, sign: PedalSign): PedalAction | null {
  return PEDAL_ACTIONS.find((action) => isSame(signs[action], sign)) ?? null;
}

/** The signs with one learned; what it meant before it means no more. */
export function learnSign(signs: PedalSigns, action: PedalAction, sign: PedalSign): PedalSigns {
  const others = PEDAL_ACTIONS.filter((each) => each !== action && !isSame(signs[each], sign));
  const kept = others.flatMap((each) => (signs[each] ? [[each, signs[each]] as const] : []));
  return { ...Object.fromEntries(kept), [action]: sign };
}

function isSign(value: unknown): value is PedalSign {
  const { kind, channel, number } = (value ?? {}) as Partial<PedalSign>;
  const inRange = (n: unknown, least: number, most: number) =>
    typeof n === 'number' && n >= least && n <= most;
  return (kind === 'control' || kind === 'note') && inRange(channel, 1, 16) && inRange(number, 0, 127);
}

/** Signs from a remembered text; what cannot be read is left out. */
export function readSigns(text: string | null): PedalSigns {
  try {
    const found = JSON.parse(text ?? '{}') as Record<string, unknown>;
    const read = PEDAL_ACTIONS.flatMap((action) =>
      isSign(found[action]) ? [[action, found[action]] as const] : [],
    );
    return Object.fromEntries(read);
  } catch {
    return {};
  }
}
