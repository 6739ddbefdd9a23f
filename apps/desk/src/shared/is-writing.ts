/** Whether somebody writes: keys then belong to the text. */

const TEXT_FIELDS = 'input:not([type="radio"], [type="checkbox"], [type="range"]), textarea';

/** Whether what has the focus is a field of text. */
export function isWriting(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(TEXT_FIELDS) !== null;
}
