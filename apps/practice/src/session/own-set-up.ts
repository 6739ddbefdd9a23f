/**
 * Which way round the drums of a student stand, for every lesson on this device; null: as each lesson says.
 */
import { SET_UPS, type SetUp } from '@shedbook/core';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';

const KEY = 'set-up';

interface KeptSetUp {
  /** What holds. */
  readonly own: SetUp | null;
  /** What the teacher set last; null where none has come. */
  readonly set: SetUp | null;
}

function readSetUp(value: unknown): SetUp | null {
  return SET_UPS.find((each) => each === value) ?? null;
}

function recall(): KeptSetUp {
  try {
    const { own, set } = JSON.parse(rememberedOwn(KEY) ?? '{}') as Partial<KeptSetUp>;
    return { own: readSetUp(own), set: readSetUp(set) };
  } catch {
    return { own: null, set: null };
  }
}

/** The student's own set-up; null where nobody has said one. */
export function ownSetUp(): SetUp | null {
  return recall().own;
}

/** Keeps what the student chose. */
export function keepSetUp(own: SetUp): void {
  rememberOwn(KEY, JSON.stringify({ ...recall(), own }));
}

/** Takes what the teacher set; what the student chooses afterwards stays until the teacher sets another. */
export function takeSetUp(set: SetUp): void {
  if (recall().set !== set) rememberOwn(KEY, JSON.stringify({ own: set, set }));
}
