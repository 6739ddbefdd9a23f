import { expect, it } from 'vitest';
import { setAudioSession } from './audio-session.ts';

it('[ST242] tells a device that asks what the sound is, and asks nothing of others', () => {
  // standard: W3C Audio Session, section 4: a document's session begins as "auto"
  const phone = { audioSession: { type: 'auto' } };
  setAudioSession('playback', phone);
  expect(phone.audioSession.type).toBe('playback');
  setAudioSession('play-and-record', phone);
  expect(phone.audioSession.type).toBe('play-and-record');
  const other = {};
  setAudioSession('playback', other);
  expect(other).toEqual({});
});
