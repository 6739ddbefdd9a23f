/** Which forms a lesson brings itself; the others every lesson has. */
import { isMap, parseDocument } from 'yaml';

/** Names of the forms that are written in a text. */
export function ownForms(text: string): readonly string[] {
  const forms = parseDocument(text).get('forms');
  return isMap(forms) ? forms.items.map((item) => String(item.key)) : [];
}
