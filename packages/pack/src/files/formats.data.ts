/** What a lesson is taken away as: the ending of the file's name and its media type. */

/**
 * Every format.
 * Source: IANA media types registry; MusicXML 4.0, file formats; RFC 9512 (YAML); RFC 8118 (PDF).
 */
export const FILE_FORMATS = {
  lesson: { ending: '.lesson.yaml', type: 'application/yaml' },
  sheet: { ending: '.pdf', type: 'application/pdf' },
  musicxml: { ending: '.musicxml', type: 'application/vnd.recordare.musicxml+xml' },
  midi: { ending: '.mid', type: 'audio/midi' },
  pack: { ending: '.zip', type: 'application/zip' },
} as const;

/** The name of a format. */
export type FileFormat = keyof typeof FILE_FORMATS;
