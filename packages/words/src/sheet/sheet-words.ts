/** The words that sheets are engraved with, by language. */
import type { Form } from '@shedbook/core';
import type { SheetWords } from '@shedbook/engrave';
import * as english from '../english/sheet.ts';
import { ENGLISH_TONGUE } from '../english/tongue.ts';
import * as german from '../german/sheet.ts';
import { GERMAN_TONGUE } from '../german/tongue.ts';
import type { LanguageTag } from '../language/languages.ts';
import type { Tongue } from '../language/tongue.ts';
import { type Spoken, speak } from '../message/speak.ts';
import { nameIn } from '../spoken/name-in.ts';
import { type FormWords, formText } from './form-text.ts';

interface Catalogue {
  readonly forms: Readonly<Record<string, string>>;
  readonly sheet: Spoken<typeof english.sheet>;
  readonly form: FormWords['form'];
}

function sheetWords(
  language: LanguageTag,
  { forms, sheet, form }: Catalogue,
  { voices, how, syllables }: Tongue,
): SheetWords {
  return {
    language,
    ...sheet,
    voices,
    how,
    syllables,
    formName: (name) => nameIn(forms, name),
    form: (told: Form) => formText(told, { voices, form }),
  };
}

/** What a sheet says in each language. */
export const SHEET_WORDS: Readonly<Record<LanguageTag, SheetWords>> = {
  en: sheetWords('en', speak(english, ENGLISH_TONGUE), ENGLISH_TONGUE),
  de: sheetWords('de', speak(german, GERMAN_TONGUE), GERMAN_TONGUE),
};
