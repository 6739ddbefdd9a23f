/**
 * What a built stylesheet asks of a browser: an unknown selector, at-rule or function loses a whole rule or line, while
 * an unknown property is passed over. Names with a vendor's prefix are left out: whoever writes one means one browser.
 */
import { compatData, lackedBy } from './support.mjs';

const withoutTexts = (text) =>
  text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/"[^"]*"|'[^']*'|url\([^)]*\)/g, '""');

/** The first entry of a name somewhere in a part of the data. */
function findEntry(data, name) {
  for (const [key, value] of Object.entries(data)) {
    if (key === '__compat') continue;
    if (key === name && value.__compat) return value.__compat;
    const inside = findEntry(value, name);
    if (inside) return inside;
  }
  return null;
}

/** Every name that a pattern's first group finds. */
const namesIn = (text, pattern) => [...new Set([...text.matchAll(pattern)].map(([, name]) => name))];

/** The parts of the platform that a stylesheet names, as `[what is shown, entry]`. */
function usedBy(text) {
  const { selectors, types, 'at-rules': rules } = compatData().css;
  const plain = withoutTexts(text);
  const heads = [...plain.matchAll(/(?:^|[{};])([^{};]*)\{/g)].map(([, head]) => head).join('\n');
  const lines = plain.replace(/(?:^|[{};])[^{};]*\{/g, '{');
  return [
    ...namesIn(plain, /@([a-z][a-z-]*)/g).map((name) => [`@${name}`, rules[name]?.__compat]),
    ...namesIn(heads, /::?([a-z][a-z-]*)/g).map((name) => [`:${name}`, selectors[name]?.__compat]),
    ...namesIn(lines, /[\s:,(]([a-z][a-z-]*)\(/g).map((name) => [`${name}()`, findEntry(types, name)]),
  ].filter(([, compat]) => compat);
}

/** What a stylesheet asks that the oldest browsers lack, as `what: which browsers`. */
export function lackedByStyle(text, oldest, allowed = new Set()) {
  return usedBy(text).flatMap(([shown, compat]) => {
    const lacks = allowed.has(shown) ? [] : lackedBy(compat, oldest);
    return lacks.length === 0 ? [] : [`${shown}: ${lacks.join(', ')}`];
  });
}
