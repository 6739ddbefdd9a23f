/**
 * Checking MusicXML against its schema.
 * Source: MusicXML 4.0, `musicxml.xsd` with the two schemas that it imports; given as text, since a package reads no
 * files.
 */
import {
  ParseOption,
  XmlBufferInputProvider,
  XmlDocument,
  XmlLibError,
  XsdValidator,
  xmlCleanupInputProvider,
  xmlRegisterInputProvider,
} from 'libxml2-wasm';
import { encodeUtf8 } from '../src/midi/utf8.ts';

/** The texts of the three schema files. */
export interface MusicXmlSchema {
  readonly musicxml: string;
  readonly xlink: string;
  readonly xml: string;
}

/** A fault, in the library's words. */
export interface SchemaFault {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

/** Gives the faults of a MusicXML text; `file` names it in them. */
export type MusicXmlValidator = (text: string, file: string) => readonly SchemaFault[];

const XSD_ROOT = 'http://www.musicxml.org/xsd/';

/** A validator that keeps the compiled schema for any number of texts. */
export function createMusicXmlValidator(schema: MusicXmlSchema): MusicXmlValidator {
  const buffers = new XmlBufferInputProvider({
    [`${XSD_ROOT}xml.xsd`]: Uint8Array.from(encodeUtf8(schema.xml)),
    [`${XSD_ROOT}xlink.xsd`]: Uint8Array.from(encodeUtf8(schema.xlink)),
  });
  xmlRegisterInputProvider(buffers);
  const document = XmlDocument.fromString(schema.musicxml, { url: `${XSD_ROOT}musicxml.xsd` });
  const validator = XsdValidator.fromDoc(document);
  xmlCleanupInputProvider();
  return (text, file) => {
    try {
      const parsed = XmlDocument.fromString(text, { url: file, option: ParseOption.XML_PARSE_NO_XXE });
      try {
        validator.validate(parsed);
      } finally {
        parsed.dispose();
      }
      return [];
    } catch (error) {
      if (!(error instanceof XmlLibError)) throw error;
      return error.details.map(({ line, col, message }) => ({ line, column: col, message }));
    }
  };
}
