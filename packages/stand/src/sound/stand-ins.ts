/** The small kit, for the page: made once, when it is first asked for. */
import { createSmallKit, SOUND_NAMES } from '@shedbook/sound';
import { KIT_RATE_HZ, KIT_SEED, type KitSound } from './messages.ts';

let made: readonly KitSound[] | null = null;

/** Every sound of the small kit. */
export function standIns(): readonly KitSound[] {
  const kit = createSmallKit({ sampleRateHz: KIT_RATE_HZ, seed: KIT_SEED });
  made ??= SOUND_NAMES.map((name) => ({ name, sound: kit.sound(name) }));
  return made;
}
