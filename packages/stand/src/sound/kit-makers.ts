/// <reference types="vite/client" />
/** The kit, made beside the page: each sound comes as soon as it is there. */
import type { SoundName } from '@shedbook/sound';
import kitWorkerUrl from './kit.worker.ts?worker&url';
import {
  ALL_SOUNDS,
  KIT_PARTS,
  KIT_RATE_HZ,
  type KitMessage,
  type KitRequest,
  type KitSound,
} from './messages.ts';

/** Who makes a part of the kit, and where its sounds come out. */
interface KitMaker {
  readonly worker: Worker;
  readonly sounds: MessagePort;
}

/** Lets two workers make the kit side by side, what is needed soonest at first. */
export function makeKit(first: readonly SoundName[]): readonly KitMaker[] {
  return KIT_PARTS.map((part) => {
    const { port1, port2 } = new MessageChannel();
    const worker = new Worker(kitWorkerUrl, { type: 'module' });
    const request: KitRequest = { sampleRateHz: KIT_RATE_HZ, part, first, port: port2 };
    worker.postMessage(request, [port2]);
    return { worker, sounds: port1 };
  });
}

/** Has some sounds of the kit made, and nothing beyond them. */
function makeSounds(names: ReadonlySet<SoundName>): Promise<readonly KitSound[]> {
  const makers = makeKit([...names]);
  const made: KitSound[] = [];
  return new Promise<readonly KitSound[]>((resolve, reject) => {
    for (const { worker, sounds } of makers) {
      worker.onerror = () => reject(new Error('Internal error: the kit could not be made'));
      sounds.onmessage = ({ data }: MessageEvent<KitMessage>) => {
        if (data === ALL_SOUNDS || !names.has(data.name)) return;
        made.push(data);
        if (made.length === names.size) resolve(made);
      };
    }
  }).finally(() => {
    for (const { worker, sounds } of makers) {
      worker.terminate();
      sounds.close();
    }
  });
}

let kept: Promise<readonly KitSound[]> = Promise.resolve([]);

/**
 * Sounds of the kit by name, for places that render instead of playing; made once, since that takes a phone many
 * seconds.
 * @throws Error when they cannot be made
 */
export async function keptSounds(names: readonly SoundName[]): Promise<readonly KitSound[]> {
  const before = kept;
  const more = async () => {
    const sounds = await before.catch((): readonly KitSound[] => []);
    const missing = new Set(names.filter((name) => !sounds.some((sound) => sound.name === name)));
    return missing.size === 0 ? sounds : [...sounds, ...(await makeSounds(missing))];
  };
  kept = more();
  const sounds = await kept;
  return sounds.filter(({ name }) => names.includes(name));
}
