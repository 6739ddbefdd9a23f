/**
 * Elements of a well-formed XML text with the places where they begin.
 *
 * Conventions: lines and columns count from 1; a column counts UTF-16 code units. A line ends with LF, CR LF or CR
 * (XML 1.0, 2.11). Character references and the five predefined entities are replaced; an entity that the document
 * defines itself is left as it is written, so that nothing can be blown up or drawn in from outside.
 * Source: XML 1.0, fifth edition. The text must be well formed, which libxml2 judges before: this only finds where
 * things stand, which libxml2 knows by line alone, and is several times faster than walking its tree.
 */

/** A place in a text. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** An element with its place. */
export interface ReadElement extends TextPlace {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly ReadElement[];
  /** Its text, trimmed, where it has no child elements; otherwise empty. */
  readonly text: string;
}

interface OpenElement extends TextPlace {
  readonly name: string;
  readonly attributes: Record<string, string>;
  readonly children: OpenElement[];
  text: string;
}

const QUOTED = `"[^"]*"|'[^']*'`;
const SKIPPED = [
  '<!--[\\s\\S]*?-->',
  '<\\?[\\s\\S]*?\\?>',
  `<!DOCTYPE(?:[^[\\]<>"']|${QUOTED}|\\[(?:<!--[\\s\\S]*?-->|<\\?[\\s\\S]*?\\?>|[^\\]"']|${QUOTED})*\\])*>`,
].join('|');

/** Skipped markup; CDATA (1); end tag (2); start tag: name (3), attributes (4), slash (5); text (6). */
const TOKENS = new RegExp(
  `${SKIPPED}|<!\\[CDATA\\[([\\s\\S]*?)\\]\\]>|</([^\\s>]+)\\s*>|<([^\\s/>!?]+)((?:[^<>"'/]|${QUOTED})*)(/?)>|([^<]+)`,
  'g',
);
const ATTRIBUTE = /([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
const REFERENCE = /&(?:#(\d+)|#x([\da-fA-F]+)|(\w+));/g;
const PREDEFINED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

function decode(text: string): string {
  if (!text.includes('&')) return text;
  return text.replaceAll(REFERENCE, (whole, decimal?: string, hex?: string, name?: string) => {
    if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
    return PREDEFINED[name ?? ''] ?? whole;
  });
}

/** A name without its namespace prefix; MusicXML has no namespace of its own. */
function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

function attributesOf(text: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const [, name = '', double, single] of text.matchAll(ATTRIBUTE)) {
    if (/^xmlns(:|$)/.test(name)) continue;
    attributes[localName(name)] = decode((double ?? single ?? '').replaceAll(/[\t\n\r]/g, ' '));
  }
  return attributes;
}

function lineStarts(text: string): readonly number[] {
  return [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map((match) => match.index + match[0].length)];
}

/** Gives the places of ascending offsets. */
function placeFinder(text: string): (offset: number) => TextPlace {
  const starts = lineStarts(text);
  let line = 0;
  return (offset) => {
    while ((starts[line + 1] ?? Number.POSITIVE_INFINITY) <= offset) line += 1;
    return { line: line + 1, column: offset - (starts[line] as number) + 1 };
  };
}

function close(element: OpenElement): void {
  element.text = element.children.length > 0 ? '' : element.text.trim();
}

/** The root element of a well-formed text; null where there is none. */
export function scanXml(text: string): ReadElement | null {
  const placeAt = placeFinder(text);
  const open: OpenElement[] = [];
  let root: OpenElement | null = null;
  for (const match of text.matchAll(TOKENS)) {
    const [, cdata, end, name, attributes, slash, plain] = match;
    const parent = open.at(-1);
    if (name !== undefined) {
      const place = placeAt(match.index);
      const element = {
        ...place,
        name: localName(name),
        attributes: attributesOf(attributes ?? ''),
        children: [],
        text: '',
      };
      parent?.children.push(element);
      root ??= element;
      if (slash === '') open.push(element);
    } else if (end !== undefined) {
      const element = open.pop();
      if (element) close(element);
    } else if (parent) parent.text += cdata ?? decode(plain ?? '').replaceAll(/\r\n?/g, '\n');
  }
  return root;
}
