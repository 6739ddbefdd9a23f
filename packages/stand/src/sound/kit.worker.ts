/** Makes a part of the kit beside everything else and hands each sound to the sound thread as soon as it is there. */
import { createKit, RINGING_SOUNDS, SOUND_NAMES } from '@shedbook/sound';
import { ALL_SOUNDS, KIT_SEED, type KitRequest, type KitSound } from './messages.ts';

self.onmessage = ({ data }: MessageEvent<KitRequest>) => {
  const kit = createKit({ sampleRateHz: data.sampleRateHz, seed: KIT_SEED });
  const names = [...new Set([...data.first, ...SOUND_NAMES])];
  for (const name of names.filter((each) => RINGING_SOUNDS.has(each) === (data.part === 'cymbals'))) {
    const sound: KitSound = { name, sound: kit.sound(name) };
    data.port.postMessage(sound);
  }
  data.port.onmessage = () => self.close();
  data.port.postMessage(ALL_SOUNDS);
};
