/** Why a loop was not clean, in English. */
import type { PlaceFact } from '@shedbook/core';
import type { LoopFact } from '@shedbook/judge';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for faults, and the sentences that they make. */
export const loops = sentences<LoopFact, PlaceFact>()({
  'missed-throughout': '{$limb :side at=start} ({$voice :voice}): missing throughout',
  'missed-at': '{$limb :side at=start} ({$voice :voice}): missing on {$place :say}',
  extra: '{$limb :side at=start} ({$voice :voice}): a stroke too many',
  'extra-near': '{$limb :side at=start} ({$voice :voice}): a stroke too many near {$place :say}',
  'early-throughout': '{$limb :side at=start} ({$voice :voice}): early by about {$ms :integer} ms throughout',
  'early-at': '{$limb :side at=start} ({$voice :voice}): early by about {$ms :integer} ms on {$place :say}',
  'late-throughout': '{$limb :side at=start} ({$voice :voice}): late by about {$ms :integer} ms throughout',
  'late-at': '{$limb :side at=start} ({$voice :voice}): late by about {$ms :integer} ms on {$place :say}',
  'too-loud':
    '{$limb :side at=start} ({$voice :voice}): about {$db :integer} dB too loud against the {$lead :voice}',
  'too-quiet':
    '{$limb :side at=start} ({$voice :voice}): about {$db :integer} dB too quiet against the {$lead :voice}',
  'slower-than-asked': 'Slower than asked by about {$percent :integer} percent',
  'faster-than-asked': 'Faster than asked by about {$percent :integer} percent',
  'heard-apart': '{$what :say}, heard apart from {$voices :voices each=the}',
  'loop-reason': '{$what :say}.',
  'loops-reason': '{$what :say}, {$times :integer} of {$of :integer} times.',
});
