/** Why a file cannot serve as a kit, in German. */
import type { SoundFontFact } from '@shedbook/sound';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for SoundFonts. */
export const soundFont = sentences<SoundFontFact>()({
  'sound-font-no-riff':
    'gefunden eine Datei von {$bytes :integer useGrouping=never} Byte, die keine RIFF-Datei ist, erwartet eine SoundFont-Datei (.sf2 oder .sf3) mit einem Schlagzeug in Bank 128',
  'sound-font-damaged':
    'gefunden eine beschädigte Datei, erwartet eine SoundFont-Datei (.sf2 oder .sf3) mit einem Schlagzeug in Bank 128 (ist sie ganz heruntergeladen?)',
  'sound-font-no-drums':
    '.input {$presets :integer useGrouping=never} .match $presets one {{gefunden {$presets} Klang, keiner davon ein Schlagzeug, erwartet eine SoundFont-Datei (.sf2 oder .sf3) mit einem Schlagzeug in Bank 128}} * {{gefunden {$presets} Klänge, keiner davon ein Schlagzeug, erwartet eine SoundFont-Datei (.sf2 oder .sf3) mit einem Schlagzeug in Bank 128}}',
  'sound-font-too-many-zones':
    'gefunden ein Schlagzeug mit {$zones :integer} Zonen, das niemand spielt, erwartet eines mit höchstens {$most :integer}',
});
