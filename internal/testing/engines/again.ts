/** Engines that end by themselves. */

/** What WebKitWebDriver says where the engine itself has ended. */
const BROKE_DOWN = /page crash or hang/;

/**
 * Tells a story. An engine that ends by itself, as WebKitGTK did once in nine stories without a sound card, is started
 * a second time, and that is said; whatever the page does wrong fails at once.
 */
export async function againWhereItBroke(tell: () => Promise<void>): Promise<void> {
  try {
    await tell();
  } catch (error) {
    if (!BROKE_DOWN.test(String(error))) throw error;
    console.warn(`The engine ended by itself and was started again: ${error}`);
    await tell();
  }
}
