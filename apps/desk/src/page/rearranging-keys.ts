/** Keys that copy, turn and move what is chosen. */
import type { KeyboardEvent } from 'react';
import type { Unit } from '../edit/rearrange.ts';
import type { Rearranging } from './rearranging.ts';

const WITH_COMMAND: Readonly<Record<string, Rearranging>> = { c: 'copy', x: 'cut', v: 'paste' };
const ALONE: Readonly<Record<string, Rearranging>> = { t: 'backwards', '<': 'earlier', '>': 'later' };
const NEXT_UNIT: Readonly<Record<Unit, Unit>> = { beat: 'bar', bar: 'exercise', exercise: 'beat' };

/** What a key does: something with what is chosen, or it changes what that is. */
export type RearrangingKey =
  | { readonly kind: 'run'; readonly what: Rearranging }
  | { readonly kind: 'unit'; readonly unit: Unit };

/** What a key means, or null where it means nothing here. */
export function rearrangingOf(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>,
  unit: Unit,
): RearrangingKey | null {
  if (event.altKey) return null;
  const key = event.key.toLowerCase();
  const what = event.ctrlKey || event.metaKey ? WITH_COMMAND[key] : ALONE[key];
  if (what) return { kind: 'run', what };
  return key === 'u' && !event.ctrlKey && !event.metaKey ? { kind: 'unit', unit: NEXT_UNIT[unit] } : null;
}
