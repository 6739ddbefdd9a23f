/**
 * XML as engraving writes it, read in one go: elements and attributes in double quotes, printable ASCII, no entities, no
 * comments, no declarations.
 *
 * Source: XML 1.0, fifth edition, as core's reader keeps it; where a text has anything else, that reader has to say what it is.
 */
import type { XmlElement } from '@shedbook/core';

/** An element without its place. */
export interface PlainElement extends Pick<XmlElement, 'name' | 'attributes'> {
  readonly children: readonly PlainElement[];
}

interface OpenElement extends PlainElement {
  readonly tag: string;
  readonly attributes: Record<string, string>;
  readonly children: OpenElement[];
}

/** Elements within each other, at most. */
const DEEPEST = 60;

const PLAIN = /^[ -~]*$/;

/** An end tag, or a start tag with its attributes, and the characters after it. */
const TAG =
  /<(?:\/([A-Za-z_][\w.:-]*)|([A-Za-z_][\w.:-]*)((?: +[A-Za-z_][\w.:-]*="[^"<&]*")*) *(\/?))>([^<&]*)/y;

const ATTRIBUTE = /([^ =]+)="([^"]*)"/g;

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** Attributes without prefixes and without namespaces; null where one stands twice. */
function attributesOf(text: string): Record<string, string> | null {
  const attributes: Record<string, string> = {};
  if (text === '') return attributes;
  ATTRIBUTE.lastIndex = 0;
  for (let match = ATTRIBUTE.exec(text); match; match = ATTRIBUTE.exec(text)) {
    const [, name, value] = match as unknown as readonly [string, string, string];
    if (name.startsWith('xmlns')) continue;
    const own = localName(name);
    if (own in attributes) return null;
    attributes[own] = value;
  }
  return attributes;
}

/** The root of a text; null where core's reader has to look at it. */
export function readPlainXml(text: string): PlainElement | null {
  if (!PLAIN.test(text) || text.includes(']]>')) return null;
  const top: OpenElement = { tag: '', name: '', attributes: {}, children: [] };
  const open = [top];
  TAG.lastIndex = 0;
  while (TAG.lastIndex < text.length) {
    const match = TAG.exec(text);
    if (!match) return null;
    const [, ended, tag, written, empty, characters] = match as unknown as readonly (string | undefined)[];
    if (tag === undefined) {
      if (open.length === 1 || open.pop()?.tag !== ended) return null;
    } else {
      const attributes = attributesOf(written as string);
      if (!attributes || open.length > DEEPEST) return null;
      const element: OpenElement = { tag, name: localName(tag), attributes, children: [] };
      open.at(-1)?.children.push(element);
      if (empty === '') open.push(element);
    }
    if (open.length === 1 && characters?.trim() !== '') return null;
  }
  return open.length === 1 && top.children.length === 1 ? (top.children[0] as PlainElement) : null;
}
