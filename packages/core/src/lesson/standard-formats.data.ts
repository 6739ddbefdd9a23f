/**
 * The standard formats that a lesson can be taken away in, beside its own: the ending of the file's name and its media
 * type.
 *
 * Source: MusicXML 4.0, file formats; IANA media types registry.
 */
export const STANDARD_FORMATS = {
  musicxml: { ending: '.musicxml', type: 'application/vnd.recordare.musicxml+xml' },
  midi: { ending: '.mid', type: 'audio/midi' },
} as const;

/** Name of a standard format. */
export type StandardFormat = keyof typeof STANDARD_FORMATS;

/** The names, as they are offered. */
export const STANDARD_FORMAT_NAMES = Object.keys(STANDARD_FORMATS) as readonly StandardFormat[];
