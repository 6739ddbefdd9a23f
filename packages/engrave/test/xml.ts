/** The root element of what engraving wrote, which must be well-formed XML. */
import { readXml, type XmlElement } from '@shedbook/core';

/** @throws Error where the text is not well formed. */
export function rootOf(text: string): XmlElement {
  const { root, fault } = readXml(text);
  if (fault) throw new Error(`${fault.found.fact} at ${fault.line}:${fault.column}`);
  return root;
}
