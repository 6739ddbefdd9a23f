/** The faces of the pages' type, which come beside the code. */

/** Milliseconds for which a page waits for its faces; whoever's network is slower reads in the device's own first. */
const PATIENCE_MS = 1_000;

const waited = (ms: number) =>
  new Promise<void>((resolve) => {
    setTimeout(resolve, ms);
  });

/**
 * Loads the faces that the styles name. A page that draws itself before they are there moves under the finger when they
 * come, since they are narrower than the device's own.
 * @param italics whether the first screen has some
 * @returns once all are there, once one cannot be had, or after a second
 */
export async function facesThere({ italics }: { readonly italics: boolean }): Promise<void> {
  const wanted = [...document.fonts].filter(({ style }) => italics || style === 'normal');
  const all = Promise.allSettled(wanted.map((face) => face.load()));
  await Promise.race([all, waited(PATIENCE_MS)]);
}
