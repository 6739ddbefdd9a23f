/** Makes a part of the kit beside everything else and hands each sound to the sound thread as soon as it is there. */
import { createKit, SOUND_NAMES, type SoundName } from '@shedbook/sound';
import { KIT_SEED, type KitRequest, type KitSound } from './messages.ts';

const CYMBALS: ReadonlySet<SoundName> = new Set(['ride', 'ride-bell', 'crash', 'hihat-open', 'hihat-splash']);

self.onmessage = ({ data }: MessageEvent<KitRequest>) => {
  const kit = createKit({ sampleRateHz: data.sampleRateHz, seed: KIT_SEED });
  const names = [...new Set([...data.first, ...SOUND_NAMES])];
  for (const name of names.filter((each) => CYMBALS.has(each) === (data.part === 'cymbals'))) {
    const sound: KitSound = { name, sound: kit.sound(name) };
    data.port.postMessage(sound);
  }
  self.close();
};
