/**
 * A reader for the XML that engraving writes: elements, attributes and character data.
 *
 * Conventions: comments, processing instructions and a document type are passed over; entities are the five of
 * XML 1.0 and character references.
 * Source: XML 1.0 (fifth edition), sections 2.3, 3.1 and 4.6.
 * Differs from the source: no internal subset, and a CDATA section is not looked for.
 */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  /** Character data directly inside, entities resolved. */
  readonly text: string;
}

interface OpenElement {
  name: string;
  attributes: Record<string, string>;
  children: XmlElement[];
  text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

/** Text with XML's entities and character references resolved. */
export function unescapeXml(text: string): string {
  if (!text.includes('&')) return text;
  return text.replaceAll(/&(#x?[0-9a-fA-F]+|\w+);/g, (whole, name: string) => {
    if (name.startsWith('#x')) return String.fromCodePoint(Number.parseInt(name.slice(2), 16));
    if (name.startsWith('#')) return String.fromCodePoint(Number(name.slice(1)));
    return ENTITIES[name] ?? whole;
  });
}

const FORBIDDEN =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text made safe for an attribute or for character data; characters that XML cannot hold become U+FFFD. */
export function escapeXml(text: string): string {
  return text
    .replaceAll(FORBIDDEN, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

function attributesOf(text: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const match of text.matchAll(/([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)) {
    attributes[match[1] ?? ''] = unescapeXml(match[2] ?? match[3] ?? '');
  }
  return attributes;
}

/**
 * The root element of an XML text.
 * @throws RangeError when tags do not match or there is no root.
 */
export function parseXml(xml: string): XmlElement {
  const document: OpenElement = { name: '', attributes: {}, children: [], text: '' };
  const open: OpenElement[] = [document];
  const token =
    /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!DOCTYPE[^>]*>|<(\/?)([\w:.-]+)((?:"[^"]*"|'[^']*'|[^>"'])*?)(\/?)>|[^<]+/g;
  for (const [whole, closing, name, attributes, selfClosing] of xml.matchAll(token)) {
    const parent = open.at(-1) as OpenElement;
    if (name === undefined) {
      if (!whole.startsWith('<')) parent.text += unescapeXml(whole);
    } else if (closing) {
      if (open.length === 1 || parent.name !== name)
        throw new RangeError(`found </${name}>, expected </${parent.name}>`);
      open.pop();
    } else {
      const element: OpenElement = {
        name,
        attributes: attributesOf(attributes ?? ''),
        children: [],
        text: '',
      };
      parent.children.push(element);
      if (!selfClosing) open.push(element);
    }
  }
  const root = document.children[0];
  if (open.length > 1 || !root)
    throw new RangeError('found an XML text that ends too early, expected a whole element');
  return root;
}
