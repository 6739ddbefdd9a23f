import { type SoundingVoice, VOICE_FACTS, VOICES } from '@shedbook/core';
import { describe, expect, it } from 'vitest';
import { keyInTrack, keyToVoice, voiceToKey } from './key-map.ts';

// standard: General MIDI System Level 1, percussion key map (keys that are a voice of the drum set)
const GENERAL_MIDI: readonly (readonly [number, string, SoundingVoice])[] = [
  [35, 'Acoustic Bass Drum', 'bass'],
  [36, 'Bass Drum 1', 'bass'],
  [37, 'Side Stick', 'sidestick'],
  [38, 'Acoustic Snare', 'snare'],
  [40, 'Electric Snare', 'rimshot'],
  [41, 'Low Floor Tom', 'tom-floor'],
  [42, 'Closed Hi-Hat', 'hihat'],
  [43, 'High Floor Tom', 'tom-low'],
  [44, 'Pedal Hi-Hat', 'hihat-foot'],
  [45, 'Low Tom', 'tom-mid'],
  [46, 'Open Hi-Hat', 'hihat-open'],
  [47, 'Low-Mid Tom', 'tom-mid'],
  [48, 'Hi-Mid Tom', 'tom-high'],
  [49, 'Crash Cymbal 1', 'crash'],
  [50, 'High Tom', 'tom-high'],
  [51, 'Ride Cymbal 1', 'ride'],
  [52, 'Chinese Cymbal', 'china'],
  [53, 'Ride Bell', 'ride'],
  [55, 'Splash Cymbal', 'splash'],
  [39, 'Hand Clap', 'clap'],
  [56, 'Cowbell', 'cowbell'],
  [57, 'Crash Cymbal 2', 'crash'],
  [59, 'Ride Cymbal 2', 'ride'],
  [76, 'Hi Wood Block', 'click'],
  [77, 'Low Wood Block', 'click'],
];

// standard: General MIDI System Level 1, keys of 35–81 that no drum-set voice has
const OTHER_KEYS = [54, 60, 69, 75, 81];

// published: magenta music_vae data.py, nine-class reduction of the Groove MIDI Dataset (Gillick et al. 2019)
const NINE_CLASSES: readonly (readonly [string, readonly number[], readonly SoundingVoice[]])[] = [
  ['kick', [36], ['bass']],
  ['snare', [38, 37, 40], ['snare', 'sidestick', 'rimshot']],
  ['closed hi-hat', [42, 22, 44], ['hihat', 'hihat-foot']],
  ['open hi-hat', [46, 26], ['hihat-open']],
  ['low tom', [43, 58], ['tom-low']],
  ['mid tom', [47, 45], ['tom-mid']],
  ['high tom', [50, 48], ['tom-high']],
  // kits send the edges of their crashes as 52 and 55: who listens reads them as the crash where no other is asked
  ['crash', [49, 52, 55, 57], ['crash', 'china', 'splash']],
  ['ride', [51, 53, 59], ['ride']],
];

describe('percussion keys', () => {
  it.each(GENERAL_MIDI)('[EX11] reads %i (%s) as %s', (key, _name, voice) => {
    expect(keyToVoice(key)?.voice).toBe(voice);
  });

  it.each(OTHER_KEYS)('[EX11] knows that %i is no voice of the drum set', (key) => {
    expect(keyToVoice(key)).toBeNull();
  });

  it.each(NINE_CLASSES)('[EX12] reads the keys of electronic kits: %s', (_name, keys, voices) => {
    expect(keys.filter((key) => !voices.some((voice) => voice === keyToVoice(key)?.voice))).toEqual([]);
  });

  it('[EX13] writes each voice with its General MIDI key and reads the same voice back', () => {
    for (const voice of VOICES) {
      const key = voiceToKey(voice, 'normal', false);
      expect(key).toBe(VOICE_FACTS[voice].gmKey);
      expect(keyToVoice(key)).toEqual({ voice, articulation: 'normal' });
    }
  });

  it('[EX13] writes the bell with its own key and a foot splash with the open hi-hat', () => {
    // standard: General MIDI System Level 1: 53 Ride Bell, 46 Open Hi-Hat
    expect(voiceToKey('ride', 'bell', false)).toBe(53);
    expect(keyToVoice(53)).toEqual({ voice: 'ride', articulation: 'bell' });
    expect(voiceToKey('hihat-foot', 'splash', false)).toBe(46);
    expect(keyInTrack(46, 'hi-hat foot')).toEqual({ voice: 'hihat-foot', articulation: 'splash' });
    expect(keyInTrack(46, 'open hi-hat')).toEqual({ voice: 'hihat-open', articulation: 'normal' });
  });
});
