/** Where the file of a thread lies. */

/**
 * The compiled file of a thread that stands beside the file that starts it, also where that one runs from its source.
 * @param here the address of the file that starts it
 * @param name of the thread's file, without its ending
 */
export function threadFile(here: string, name: string): URL {
  const compiled = here.endsWith('.js') ? here : here.replace(/\/src\/(?!.*\/src\/)/, '/dist/');
  return new URL(`./${name}.js`, compiled);
}
