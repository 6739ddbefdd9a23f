/**
 * XML text to a tree of plain data with places.
 *
 * Conventions: nothing outside the text is ever loaded. Character references and the five predefined entities are
 * replaced; an entity that the document defines itself is left as it is written, so that nothing can be blown up or
 * drawn in from outside. Names lose their namespace prefixes, and namespace declarations are left out.
 * Source: XML 1.0, fifth edition, as the strict reader saxes keeps it.
 */
import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { type TextPlace, textPlaces } from './text-place.ts';
import { type XmlFaultFact, xmlFaultOf } from './xml-fault.ts';

/** An element, at the place of the `<` that begins it. */
export interface XmlElement extends TextPlace {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  /** The character data directly inside it, trimmed. */
  readonly text: string;
}

/** Why a text is not well-formed XML, and where. */
export interface XmlFault extends TextPlace {
  readonly found: XmlFaultFact;
}

/** A document, or the first fault of a text that is none. */
export type XmlReading =
  | { readonly root: XmlElement; readonly fault: null }
  | { readonly root: null; readonly fault: XmlFault };

interface OpenElement extends XmlElement {
  readonly children: XmlElement[];
  text: string;
}

/** Half of a surrogate pair, which is no character; saxes takes it for one. */
const HALF_PAIR = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/** Elements within each other, and elements in all: more than any score of drums, and little enough for memory. */
const DEEPEST = 64;
const MOST_ELEMENTS = 200_000;

/** Thrown inside the reader only, so that it stops at the first fault. */
class XmlSyntaxError extends Error {
  readonly found: XmlFaultFact;

  constructor(found: XmlFaultFact) {
    super(found.fact);
    this.found = found;
  }
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

function isPrefixed(name: string): boolean {
  return name === 'xmlns' || name.includes(':');
}

function attributesOf({ attributes }: SaxesTagPlain): Readonly<Record<string, string>> {
  const names = Object.keys(attributes);
  // a copy, since saxes gives an object without a prototype, which is slower to read from
  if (!names.some(isPrefixed)) return { ...attributes };
  const own = names.filter((name) => !/^xmlns(?::|$)/.test(name));
  return Object.fromEntries(own.map((name) => [localName(name), attributes[name] as string]));
}

/** The names of the entities that a document type defines. */
function entitiesOf(doctype: string): readonly string[] {
  return [...doctype.matchAll(/<!ENTITY\s+([^\s%]+)/g)].map(([, name]) => name as string);
}

/** Gathers elements; `closed` is the last one that has ended, which is the root when all have. */
class TreeBuilder {
  readonly #parser: SaxesParser;
  readonly #open: OpenElement[] = [];
  closed: XmlElement | null = null;
  #count = 0;

  constructor(text: string, parser: SaxesParser) {
    const placeAt = textPlaces(text);
    this.#parser = parser;
    parser.on('opentag', (tag) => {
      // a tag holds no other "<" than its first (XML 1.0, 3.1)
      this.#start(tag, placeAt(text.lastIndexOf('<', parser.position - 1)));
    });
    parser.on('closetag', () => this.#end());
    parser.on('text', (characters) => this.#characters(characters));
    parser.on('cdata', (characters) => this.#characters(characters));
    parser.on('doctype', (doctype) => {
      for (const name of entitiesOf(doctype)) this.#parser.ENTITIES[name] ??= `&${name};`;
    });
  }

  #start(tag: SaxesTagPlain, { line, column }: TextPlace): void {
    this.#count += 1;
    if (this.#open.length >= DEEPEST) throw new XmlSyntaxError({ fact: 'xml-too-deep', most: DEEPEST });
    if (this.#count > MOST_ELEMENTS) throw new XmlSyntaxError({ fact: 'xml-too-many', most: MOST_ELEMENTS });
    const name = localName(tag.name);
    const element = { line, column, name, attributes: attributesOf(tag), children: [], text: '' };
    this.#open.at(-1)?.children.push(element);
    this.#open.push(element);
  }

  #end(): void {
    const element = this.#open.pop() as OpenElement;
    element.text = element.text.trim();
    this.closed = element;
  }

  #characters(characters: string): void {
    const element = this.#open.at(-1);
    if (element) element.text += characters;
  }
}

/** What saxes complains of, with the element that a wrong end tag ends. */
function foundOf(message: string, ended: XmlElement | null): XmlFaultFact {
  if (!message.startsWith('unexpected close tag') || !ended) return xmlFaultOf(message);
  return { fact: 'xml-end-tag', name: ended.name, fromLine: ended.line };
}

/** Faults that a reader finds at last where it looks for the end of an ampersand's name. */
const BY_AMPERSAND: readonly XmlFaultFact['fact'][] = ['xml-ampersand', 'xml-never-ended', 'xml-breaks-off'];

/** Where the ampersand stands that led to a fault, as an offset; null where none did. */
function ampersandBefore(text: string, position: number, { fact }: XmlFaultFact): number | null {
  if (!BY_AMPERSAND.includes(fact)) return null;
  const read = text.slice(0, position);
  const at = read.lastIndexOf('&');
  const isOpen = at >= 0 && !/;.|-->|\]\]>/s.test(read.slice(at));
  return isOpen ? at : null;
}

/** The fault at which the reader stopped. */
function faultAt(text: string, parser: SaxesParser, found: XmlFaultFact): XmlFault {
  const ampersand = ampersandBefore(text, parser.position, found);
  if (ampersand !== null) return { ...textPlaces(text)(ampersand), found: { fact: 'xml-ampersand' } };
  return { line: parser.line, column: parser.columnIndex + 1, found };
}

/** Reads a document up to its end or its first fault. */
export function readXml(text: string): XmlReading {
  const half = text.search(HALF_PAIR);
  if (half >= 0)
    return { root: null, fault: { ...textPlaces(text)(half), found: { fact: 'xml-character' } } };
  const parser = new SaxesParser({ position: false });
  const tree = new TreeBuilder(text, parser);
  parser.on('error', ({ message }) => {
    throw new XmlSyntaxError(foundOf(message, tree.closed));
  });
  try {
    parser.write(text).close();
    return { root: tree.closed as XmlElement, fault: null };
  } catch (error) {
    if (!(error instanceof XmlSyntaxError)) throw error;
    return { root: null, fault: faultAt(text, parser, error.found) };
  }
}

/** The first child with a name. */
export function childOf(element: XmlElement | undefined, name: string): XmlElement | undefined {
  return element?.children.find((child) => child.name === name);
}

/** All children with a name. */
export function childrenOf(element: XmlElement | undefined, name: string): readonly XmlElement[] {
  return element?.children.filter((child) => child.name === name) ?? [];
}

/** The first descendant down a path of names. */
export function descend(element: XmlElement | undefined, ...path: readonly string[]): XmlElement | undefined {
  return path.reduce((at: XmlElement | undefined, name) => childOf(at, name), element);
}
