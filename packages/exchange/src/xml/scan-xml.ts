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

/** A document type with its internal subset. */
const DOCUMENT_TYPE =
  /<!DOCTYPE(?:[^[\]<>"']|"[^"]*"|'[^']*'|\[(?:<!--[\s\S]*?-->|<\?[\s\S]*?\?>|[^\]"']|"[^"]*"|'[^']*')*\])*>/y;

/** A start tag with attributes: name, attributes, slash. */
const START_TAG = /<([^\s/>]+)((?:[^<>"'/]|"[^"]*"|'[^']*')*)(\/?)>/y;

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
  const starts = [0];
  for (const match of text.matchAll(/\r\n|\r|\n/g)) starts.push(match.index + match[0].length);
  return starts;
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

/** Where the markup that starts at `from` and is neither tag nor CDATA ends. */
function endOfSkipped(text: string, from: number): number {
  if (text.startsWith('<!--', from)) return text.indexOf('-->', from) + 3;
  if (text.startsWith('<?', from)) return text.indexOf('?>', from) + 2;
  DOCUMENT_TYPE.lastIndex = from;
  return DOCUMENT_TYPE.test(text) ? DOCUMENT_TYPE.lastIndex : text.length;
}

class Scanner {
  readonly #text: string;
  readonly #placeAt: (offset: number) => TextPlace;
  readonly #open: OpenElement[] = [];
  root: OpenElement | null = null;

  constructor(text: string) {
    this.#text = text;
    this.#placeAt = placeFinder(text);
  }

  /** Reads the markup at `from` and gives the offset after it. */
  markup(from: number): number {
    const next = this.#text.charAt(from + 1);
    if (next === '/') return this.#end(from);
    if (next === '!' && this.#text.startsWith('<![CDATA[', from)) return this.#cdata(from);
    if (next === '!' || next === '?') return endOfSkipped(this.#text, from);
    return this.#start(from);
  }

  /** Adds text to the element that is open. */
  characters(from: number, to: number): void {
    const element = this.#open.at(-1);
    if (!element || element.children.length > 0 || to === from) return;
    const text = this.#text.slice(from, to);
    element.text += decode(text.includes('\r') ? text.replaceAll(/\r\n?/g, '\n') : text);
  }

  #cdata(from: number): number {
    const end = this.#text.indexOf(']]>', from);
    const element = this.#open.at(-1);
    if (element) element.text += this.#text.slice(from + '<![CDATA['.length, end);
    return end + 3;
  }

  #end(from: number): number {
    const element = this.#open.pop();
    if (element) element.text = element.children.length > 0 ? '' : element.text.trim();
    return this.#text.indexOf('>', from) + 1;
  }

  #start(from: number): number {
    START_TAG.lastIndex = from;
    const [tag = '', name = '', attributes = '', slash] = START_TAG.exec(this.#text) ?? [];
    const { line, column } = this.#placeAt(from);
    const own = attributes === '' ? {} : attributesOf(attributes);
    const element = { line, column, name: localName(name), attributes: own, children: [], text: '' };
    this.#open.at(-1)?.children.push(element);
    this.root ??= element;
    if (slash === '') this.#open.push(element);
    return from + Math.max(1, tag.length);
  }
}

/** The root element of a well-formed text; null where there is none. */
export function scanXml(text: string): ReadElement | null {
  const scanner = new Scanner(text);
  let at = 0;
  while (at < text.length) {
    const markup = text.indexOf('<', at);
    const end = markup < 0 ? text.length : markup;
    scanner.characters(at, end);
    at = markup < 0 ? end : scanner.markup(markup);
  }
  return scanner.root;
}
