/**
 * XML text from a tree.
 * Source: Extensible Markup Language (XML) 1.0, fifth edition: 3.3.3 for line ends and tabs in attributes. A character
 * that may not stand in XML becomes U+FFFD.
 */
import { escapeXml } from '@shedbook/core';

/** An element to be written; its content is either text or elements. */
export interface XmlNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly content: string | readonly XmlNode[];
}

/** What may be given as content: nulls are left out. */
export type XmlContent = string | number | readonly (XmlNode | null)[];

/**
 * An element.
 * @example xml('beats', {}, 4).content // '4'
 */
export function xml(name: string, attributes: XmlNode['attributes'] = {}, content: XmlContent = []): XmlNode {
  if (typeof content === 'number') return { name, attributes, content: `${content}` };
  if (typeof content === 'string') return { name, attributes, content };
  return { name, attributes, content: content.filter((node) => node !== null) };
}

function attributeText([name, value]: readonly [string, string | number]): string {
  return ` ${name}="${escapeXml(`${value}`).replaceAll('\n', '&#10;').replaceAll('\t', '&#9;')}"`;
}

function lines(node: XmlNode, indent: string, out: string[]): void {
  const open = `${indent}<${node.name}${Object.entries(node.attributes).map(attributeText).join('')}`;
  if (node.content.length === 0) out.push(`${open}/>`);
  else if (typeof node.content === 'string') out.push(`${open}>${escapeXml(node.content)}</${node.name}>`);
  else {
    out.push(`${open}>`);
    for (const child of node.content) lines(child, `${indent}  `, out);
    out.push(`${indent}</${node.name}>`);
  }
}

/** The document of a root element, with a document type where one is given. */
export function printXml(root: XmlNode, doctype: string | null = null): string {
  const out = ['<?xml version="1.0" encoding="UTF-8"?>', ...(doctype ? [doctype] : [])];
  lines(root, '', out);
  return `${out.join('\n')}\n`;
}
