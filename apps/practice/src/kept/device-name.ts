/** The lasting name of this device in logs and takes; it says nothing about the device or its owner. */
import { remember, remembered } from '@shedbook/stand';

const KEY = 'device';

let own: string | null = null;

/** The name; the same for ever in one browser. */
export function deviceName(): string {
  own ??= remembered(KEY) ?? `device-${crypto.randomUUID().slice(0, 8)}`;
  remember(KEY, own);
  return own;
}

let count = 0;

/** A name that nothing else has. */
export function newId(): string {
  count += 1;
  return `${deviceName()} ${Date.now().toString(36)} ${count}`;
}
