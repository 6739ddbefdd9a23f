/**
 * What the page's sound is to the device: on phones that ask, plain sound of a page is muted by the silent switch, and
 * a microphone is silent in a session that only plays.
 *
 * Source: W3C Audio Session, `AudioSessionType`; where it is missing nothing is to be said.
 */

/** Kinds of a session that are used here. */
export type SessionType = 'playback' | 'play-and-record';

interface SessionNavigator {
  readonly audioSession?: { type: string };
}

/** Says what the page's sound is, where the device asks. @param of the browser's own navigator where left out */
export function setAudioSession(
  type: SessionType,
  of: SessionNavigator = navigator as SessionNavigator,
): void {
  if (of.audioSession) of.audioSession.type = type;
}
