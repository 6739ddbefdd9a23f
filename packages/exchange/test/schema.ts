/** The MusicXML 4.0 schema of the fixtures, compiled once for a test file. */
import { readFileSync } from 'node:fs';
import { createMusicXmlValidator, type MusicXmlValidator } from './validate.ts';

function schemaText(name: string): string {
  return readFileSync(new URL(`../../../internal/fixtures/musicxml-4.0/${name}`, import.meta.url), 'utf8');
}

/** A validator against the published schema. */
export function schemaValidator(): MusicXmlValidator {
  return createMusicXmlValidator({
    musicxml: schemaText('musicxml.xsd'),
    xlink: schemaText('xlink.xsd'),
    xml: schemaText('xml.xsd'),
  });
}
