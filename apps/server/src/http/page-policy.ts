/** The content policy of a page that the server sends. */
import { CONTENT_POLICY } from '@shedbook/pack/serving';

/**
 * The header's value: our pages stand in nobody else's frame.
 * @param directives of the page; those of every page where left out
 */
export function pagePolicy(directives = CONTENT_POLICY): string {
  return [...directives, "frame-ancestors 'none'"].join('; ');
}
