/** What was found of a device, as lines to read: a name and a value each, in parts. */
import type { SoundCheckWords } from '@shedbook/words';
import { isTouched } from '../device/done-to-track.ts';
import type { MicrophoneFacts, SoundFacts, StorageFacts } from './facts.ts';

/** A line. */
export interface Row {
  readonly key: keyof SoundCheckWords['rows'];
  readonly value: string;
}

/** Lines under a heading. */
export interface Part {
  readonly key: keyof SoundCheckWords['parts'];
  readonly rows: readonly Row[];
}

/** What was found so far. */
export interface Found {
  readonly sound: SoundFacts;
  readonly storage: StorageFacts;
  readonly microphone: MicrophoneFacts | null;
  readonly at: string;
}

const MEGABYTE = 1e6;

/** Says values in the words of a language. */
function sayer(words: SoundCheckWords) {
  const known = <T>(value: T | null, say: (value: T) => string) =>
    value === null ? words.unknown : say(value);
  return {
    ms: (value: number | null) => known(value, (ms) => words.milliseconds({ n: Math.round(ms) })),
    mb: (value: number | null) =>
      known(value, (bytes) => words.megabytes({ n: Math.round(bytes / MEGABYTE) })),
    db: (value: number | null) => known(value, (db) => words.decibels({ n: Math.round(db) })),
    is: (value: boolean | null) => known(value, (is) => (is ? words.yes : words.no)),
  };
}

function microphoneRows(found: MicrophoneFacts, words: SoundCheckWords): readonly Row[] {
  if (found.refusal) return [{ key: 'name', value: words.refusals[found.refusal] }];
  const say = sayer(words);
  return [
    { key: 'name', value: found.name || words.unknown },
    { key: 'echo', value: say.is(found.echo) },
    { key: 'noise', value: say.is(found.noise) },
    { key: 'gain', value: say.is(found.gain) },
    { key: 'level', value: say.db(found.levelDb) },
  ];
}

/** Whether the device changes what its microphone hears. */
export function isChanged(microphone: MicrophoneFacts | null): boolean {
  return microphone !== null && isTouched(microphone);
}

/** Everything that was found. */
export function partsOf({ sound, storage, microphone, at }: Found, words: SoundCheckWords): readonly Part[] {
  const say = sayer(words);
  const heard = microphone ? [{ key: 'microphone', rows: microphoneRows(microphone, words) } as const] : [];
  return [
    {
      key: 'sound',
      rows: [
        { key: 'plays', value: sound.lack ? words.lacks[sound.lack] : words.ways[sound.way] },
        { key: 'first', value: say.ms(sound.firstMs) },
        { key: 'strokes', value: String(sound.strokes) },
        { key: 'rate', value: String(sound.rateHz) },
        { key: 'base', value: say.ms(sound.baseMs) },
        { key: 'output', value: say.ms(sound.outputMs) },
      ],
    },
    {
      key: 'clocks',
      rows: [
        { key: 'audio', value: say.ms(sound.audioMs) },
        { key: 'stamp', value: say.ms(sound.stampMs) },
      ],
    },
    ...heard,
    {
      key: 'storage',
      rows: [
        { key: 'keeps', value: say.is(storage.keeps) },
        { key: 'lasting', value: say.is(storage.lasting) },
        { key: 'used', value: say.mb(storage.usedBytes) },
        { key: 'left', value: say.mb(storage.leftBytes) },
        { key: 'offline', value: say.is(storage.offline) },
        { key: 'midi', value: say.is(storage.midi) },
      ],
    },
    {
      key: 'versions',
      rows: [
        { key: 'browser', value: navigator.userAgent },
        { key: 'screen', value: `${screen.width} × ${screen.height} × ${window.devicePixelRatio}` },
        { key: 'page', value: location.host },
        { key: 'at', value: at },
      ],
    },
  ];
}
