/** Doc comments of a source file. */

/**
 * Text of the doc comment that stands directly over an offset, or null. Lines for the linter may stand between; the
 * comment of the module counts for the statement that follows it.
 */
export function docAbove({ comments, text }, offset) {
  let end = offset;
  for (const comment of comments.toReversed()) {
    if (comment.end > end || text.slice(comment.end, end).trim() !== '') continue;
    if (comment.type === 'Block' && comment.value.startsWith('*')) return comment.value;
    if (!/^\s*(?:biome-ignore|@vite-ignore)/.test(comment.value)) return null;
    end = comment.start;
  }
  return null;
}
