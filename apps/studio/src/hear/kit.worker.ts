/** Makes the kit beside everything else and hands each sound to the sound thread as soon as it is there. */
import { createKit, SOUND_NAMES } from '@shedbook/sound';
import { KIT_SEED, type KitRequest, type KitSound } from './messages.ts';

self.onmessage = ({ data }: MessageEvent<KitRequest>) => {
  const kit = createKit({ sampleRateHz: data.sampleRateHz, seed: KIT_SEED });
  for (const name of new Set([...data.first, ...SOUND_NAMES])) {
    const sound: KitSound = { name, sound: kit.sound(name) };
    data.port.postMessage(sound);
  }
  self.close();
};
