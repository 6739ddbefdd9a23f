/**
 * What a device does to the sound of its microphone. A page asks that nothing be done; what the track says of itself is
 * what really is.
 *
 * Source: Media Capture and Streams, `getSettings`: a setting that a browser does not have is missing.
 */

/** What would be done for speech ruins drums: all of it is asked to be off. */
export const UNTOUCHED: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
};

/** What is done; null where the browser does not say. */
export interface DoneToTrack {
  readonly echo: boolean | null;
  readonly noise: boolean | null;
  readonly gain: boolean | null;
}

/** Off is told as false; kinds of it are told by their name. */
function isDone(setting: unknown): boolean | null {
  return setting === undefined ? null : setting !== false;
}

/** What the track says that is done. */
export function doneToTrack(track: Pick<MediaStreamTrack, 'getSettings'>): DoneToTrack {
  const { echoCancellation, noiseSuppression, autoGainControl } = track.getSettings();
  return { echo: isDone(echoCancellation), noise: isDone(noiseSuppression), gain: isDone(autoGainControl) };
}

/** Whether anything is done. */
export function isTouched({ echo, noise, gain }: DoneToTrack): boolean {
  return Boolean(echo || noise || gain);
}
