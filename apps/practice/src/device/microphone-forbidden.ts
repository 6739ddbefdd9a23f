/** Whether the microphone may not be used here at all: somebody above this floor knows. */

let asked: () => boolean = () => false;

/** Has somebody be asked, each time before the microphone is opened, whether that is forbidden. */
export function forbidMicrophoneWhere(isForbidden: () => boolean): void {
  asked = isForbidden;
}

/** Whether it is forbidden now. */
export function isMicrophoneForbidden(): boolean {
  return asked();
}
