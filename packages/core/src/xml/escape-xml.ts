/**
 * Text that stands for itself in XML.
 * Source: XML 1.0, fifth edition: 2.2 for the characters that may stand in a document, 2.4 for those that must be
 * escaped, 2.11 for carriage returns.
 */

/** Text that needs no change, which most texts are. */
const PLAIN = /^[\w .,:;/()+-]*$/;

const FORBIDDEN =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\r': '&#13;',
};

/**
 * Text made safe for character data and for an attribute in double quotes. A character that XML cannot hold becomes
 * U+FFFD.
 * @example escapeXml('"A" & B') // '&quot;A&quot; &amp; B'
 */
export function escapeXml(text: string): string {
  if (PLAIN.test(text)) return text;
  return text.replaceAll(FORBIDDEN, '\ufffd').replaceAll(/[&<>"\r]/g, (sign) => ESCAPES[sign] as string);
}
