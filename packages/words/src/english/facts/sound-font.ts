/** Why a file cannot serve as a kit, in English. */
import type { SoundFontFact } from '@shedbook/sound';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for SoundFonts. */
export const soundFont = sentences<SoundFontFact>()({
  'sound-font-no-riff':
    '.input {$bytes :integer useGrouping=never} .match $bytes one {{found a file of {$bytes} byte that is no RIFF file, expected a SoundFont file (.sf2 or .sf3) with a drum set in bank 128}} * {{found a file of {$bytes} bytes that is no RIFF file, expected a SoundFont file (.sf2 or .sf3) with a drum set in bank 128}}',
  'sound-font-damaged':
    'found a damaged file, expected a SoundFont file (.sf2 or .sf3) with a drum set in bank 128 (is the download complete?)',
  'sound-font-no-drums':
    '.input {$presets :integer useGrouping=never} .match $presets one {{found {$presets} preset, none of drums, expected a SoundFont file (.sf2 or .sf3) with a drum set in bank 128}} * {{found {$presets} presets, none of drums, expected a SoundFont file (.sf2 or .sf3) with a drum set in bank 128}}',
  'sound-font-too-many-zones':
    'found a drum set of {$zones :integer} zones, which nobody plays, expected one of at most {$most :integer}',
});
