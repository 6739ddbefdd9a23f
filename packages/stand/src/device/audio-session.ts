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

/** Whether the device asks what a page's sound is, as it does where that may take the place of its own. */
export function hasAudioSession(of: SessionNavigator = navigator as SessionNavigator): boolean {
  return of.audioSession !== undefined;
}

/** Says what the page's sound is, where the device asks. @param of the browser's own navigator where left out */
export function setAudioSession(
  type: SessionType,
  of: SessionNavigator = navigator as SessionNavigator,
): void {
  if (of.audioSession) of.audioSession.type = type;
}
